/** Gives the pages the machine they run on. */
import { createContext, useContext } from 'react';
import type { Host } from '../../main/contract/host';

export const HostContext = createContext<Host | null>(null);

/** @throws Error outside a HostContext */
export function useHost(): Host {
  const host = useContext(HostContext);
  if (!host) throw new Error('No host around this panel.');
  return host;
}
