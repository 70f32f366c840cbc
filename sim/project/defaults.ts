/** What stands for every key that a file leaves out. */
import type { Method } from './document';
import { defaultsOf } from './key';
import { RUN } from './keys';
import { ASSEMBLY, BLADE, GUIDE, METHOD, MINUTES, TEST, TILT, WIDTH } from './method-keys';
import { COSTS, LIMITS, STOCK } from './piece-keys';

export const DEFAULT_STOCK = defaultsOf(STOCK);
export const DEFAULT_LIMITS = defaultsOf(LIMITS);
export const DEFAULT_COSTS = defaultsOf(COSTS);
export const DEFAULT_TILT = defaultsOf(TILT);
export const DEFAULT_GUIDE = defaultsOf(GUIDE);
export const DEFAULT_WIDTH = defaultsOf(WIDTH);
export const DEFAULT_BLADE = defaultsOf(BLADE);
export const DEFAULT_ASSEMBLY = defaultsOf(ASSEMBLY);
export const DEFAULT_TEST = defaultsOf(TEST);
export const DEFAULT_MINUTES = defaultsOf(MINUTES);
export const DEFAULT_RUN = defaultsOf(RUN);

/** A method with nothing wrong in it: every error zero. */
export function defaultMethod(name: string): Method {
  return { ...defaultsOf(METHOD), name };
}
