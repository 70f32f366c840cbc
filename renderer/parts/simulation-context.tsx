/** Gives the panels the running simulation to stop and to take up again. */
import { createContext, useContext } from 'react';
import type { Simulation } from '../state/simulate-project';

export const SimulationContext = createContext<Simulation | null>(null);

/** @throws Error outside a SimulationContext */
export function useSimulation(): Simulation {
  const simulation = useContext(SimulationContext);
  if (!simulation) throw new Error('No simulation around this panel.');
  return simulation;
}
