/** Keeps on this machine what the state table says is kept there, and nothing else. */
import type { STATE_TABLE } from './state-table';
import { useView, type ViewState } from './view-store';

type KeptKey = {
  [Key in keyof ViewState]: (typeof STATE_TABLE)[Key]['kept'] extends 'machine' ? Key : never;
}[keyof ViewState];
type Kept = Pick<ViewState, KeptKey>;

/** One check a key: a value of any other kind, left by an older or newer program, is passed over. */
const READS: { [Key in KeptKey]: (value: unknown) => value is Kept[Key] } = {
  theme: (value): value is Kept['theme'] => value === 'system' || value === 'light' || value === 'dark',
  orientation: (value): value is Kept['orientation'] => value === 'shown' || value === 'put away',
  inchFractions: (value): value is Kept['inchFractions'] => typeof value === 'boolean',
  angleStyle: (value): value is Kept['angleStyle'] => value === 'decimal' || value === 'minutes',
  paper: (value): value is Kept['paper'] => value === 'a4' || value === 'letter',
};

const KEPT_KEYS = Object.keys(READS) as KeptKey[];

export function keptView(text: string | null): Partial<Kept> {
  if (text === null) return {};
  let stored: unknown;
  try {
    stored = JSON.parse(text);
  } catch {
    return {};
  }
  if (typeof stored !== 'object' || stored === null) return {};
  const entries = Object.entries(stored);
  return Object.fromEntries(entries.filter(([key, value]) => KEPT_KEYS.some((k) => k === key && READS[k](value))));
}

/**
 * Takes up what was kept, and has every later change kept.
 *
 * @param kept what a former start kept, null when there is nothing
 * @param keep is given the whole text anew at every change
 */
export function keepViewOnMachine(kept: string | null, keep: (text: string) => void): void {
  useView.setState(keptView(kept));
  useView.subscribe((view, before) => {
    if (KEPT_KEYS.every((key) => view[key] === before[key])) return;
    keep(JSON.stringify(Object.fromEntries(KEPT_KEYS.map((key) => [key, view[key]]))));
  });
}
