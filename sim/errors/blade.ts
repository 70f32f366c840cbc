/** A blade pushed aside: it tilts and shifts the kerf, bows within the cut, and now and then snags. */
import type { Blade, Sequence } from '../project/document';
import { idealStiffness, plateBeta, REAL_BLADE_FACTOR } from './blade-stiffness';
import type { Cut } from './cuts';
import type { CutRows, DrawCollector, DrawList, Effects } from './draw-list';
import { anglesOf, both, widthsOfCut } from './face-index';

/** Sideways stiffness at the rim, N/mm: as given, or from the plate. */
export function bladeStiffness(blade: Blade): number {
  return blade.stiffnessNPerMm ?? REAL_BLADE_FACTOR * idealStiffness(blade.diameterMm, blade.plateMm, blade.collarMm);
}

export function bladeDraws(blade: Blade, cuts: readonly Cut[], sequence: Sequence, to: DrawCollector): void {
  const perNewton = 1 / bladeStiffness(blade);
  const overhang = (blade.diameterMm - blade.collarMm) / 2;
  const tiltPerNewton = (plateBeta(blade.collarMm / blade.diameterMm) * perNewton) / overhang;
  for (const cut of cuts) {
    const pushed = (force: number) =>
      both(
        anglesOf([cut], 'bevel', force * tiltPerNewton),
        // With the faces turned over, the kerf that moves widens one stave by what it takes from the next.
        widthsOfCut(cut, -force * perNewton, (sequence === 'flipFace' ? force : -force) * perNewton),
      );
    to.offset('deflection', 'perCut', pushed(blade.forceMeanN));
    to.normal('deflection', 'perCut', pushed(blade.forceSigmaN));
  }
}

const NO_ROWS = (): [Effects, Effects, Effects] => [
  { index: [], weight: [] },
  { index: [], weight: [] },
  { index: [], weight: [] },
];

/** What a mark in each row of each cut does to the joints. In `flipFace` the two sides of a kerf mate, ends exchanged. */
export function rowsOfCuts(cuts: readonly Cut[], sides: number, sequence: Sequence): CutRows[] {
  return cuts.map((cut) => {
    const rows = NO_ROWS();
    rows.forEach((effects, row) => {
      const put = (joint: number, ontoRow: number, weight: number) => {
        effects.index.push(ontoRow * sides + joint);
        effects.weight.push(weight);
      };
      if (cut.right !== undefined) put(cut.right, row, 1);
      if (cut.left !== undefined) {
        const joint = (cut.left + sides - 1) % sides;
        if (sequence === 'flipFace') put(joint, 2 - row, -1);
        else put(joint, row, 1);
      }
    });
    return { rows };
  });
}

export function bladeShape(blade: Blade): Pick<DrawList, 'bulgeMm' | 'snag'> {
  const perNewton = 1 / bladeStiffness(blade);
  return {
    bulgeMm: blade.forceWithinCutN * perNewton,
    snag: {
      chance: blade.snagMeanN > 0 ? blade.snagChance : 0,
      meanMm: blade.snagMeanN * perNewton,
      recutAboveMm: blade.recutAboveMm ?? Number.POSITIVE_INFINITY,
    },
  };
}
