/**
 * Which cut makes which faces. Cut c of a strip, counted from 0, in the order they are made.
 *
 * `flipFace`: the strip is turned over after every cut; k + 1 cuts make k staves, and a cut between two staves makes the
 * right face of one and the left face of the next. `swapSides`: two cuts a stave, each its own.
 */
import type { Sequence } from '../project/document';

export interface Cut {
  strip: number;
  /** Place in the strip's order of cuts, from 0. */
  order: number;
  /** Stave whose right face this cut makes. */
  right?: number;
  /** Stave whose left face this cut makes. */
  left?: number;
  /** Strip still in hand while cutting, mm. */
  inHandMm: number;
}

export function cutsOf(
  sides: number,
  sequence: Sequence,
  strips: readonly number[],
  stripLengthMm: number,
  trimMm: number,
  pitch: number,
): Cut[] {
  const cuts: Cut[] = [];
  let first = 0;
  strips.forEach((staves, strip) => {
    const inHand = (stave: number) => stripLengthMm - trimMm - stave * pitch;
    if (sequence === 'flipFace') {
      for (let c = 0; c <= staves; c++) {
        cuts.push({
          strip,
          order: c,
          ...(c > 0 && { right: first + c - 1 }),
          ...(c < staves && { left: first + c }),
          inHandMm: inHand(Math.max(0, c - 1)),
        });
      }
    } else {
      for (let j = 0; j < staves; j++) {
        cuts.push({ strip, order: 2 * j, left: first + j, inHandMm: inHand(j) });
        cuts.push({ strip, order: 2 * j + 1, right: first + j, inHandMm: inHand(j) });
      }
    }
    first += staves;
  });
  if (first !== sides) throw new Error(`The strips carry ${first} staves, not ${sides}.`);
  return cuts;
}
