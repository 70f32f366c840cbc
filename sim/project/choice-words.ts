/** What the plain choices of a method are called wherever a person reads of them. */
import type { Sequence, TestKind } from './document';

export const SEQUENCE_WORDS: Readonly<Record<Sequence, string>> = {
  flipFace: 'Strip turned over',
  swapSides: 'Strip turned end for end',
};

/** As it stands in a sentence: "with a whole ring". */
export const TEST_KIND_NAMES: Readonly<Record<TestKind, string>> = {
  none: 'no test piece',
  fullRing: 'a whole ring',
  halfRing: 'half a ring',
  twoHalvesTogether: 'two halves together',
  pair: 'a pair of offcuts',
};
