/** What the test pieces are called in sentences. */
import type { TestKind } from './document';

/** As it stands in a sentence: "with a whole ring". */
export const TEST_KIND_NAMES: Readonly<Record<TestKind, string>> = {
  none: 'no test piece',
  fullRing: 'a whole ring',
  halfRing: 'half a ring',
  twoHalvesTogether: 'two halves together',
  pair: 'a pair of offcuts',
};
