/** Single joints and single rings in words. */
import { NO_GAP_MM, WILL_NOT_CLOSE_MM } from '../geometry/thresholds';
import type { Assembly } from '../project/document';
import type { JointOpening, SingleRing } from '../run/single-ring';
import type { TouchExcess } from '../run/touch-excess';
import { capital, comparedGaps, countText, type Display, gapText, lengthText, listText } from './figures';
import type { TextTable } from './tables';

/** "joint 3"; joints are counted from 1. */
export const jointName = (joint: number): string => `joint ${joint + 1}`;

/** "between staves 3 and 4"; the last joint lies between the last stave and the first. */
export function betweenText(joint: number, sides: number): string {
  return `between staves ${joint + 1} and ${((joint + 1) % sides) + 1}`;
}

const openingText = (mm: number, display: Display): string =>
  mm < NO_GAP_MM ? 'touching' : `open ${gapText(mm, display)}`;

/** "open 0.08 mm outside, touching inside". */
export function openingsText({ outerMm, innerMm }: JointOpening, display: Display): string {
  if (outerMm < NO_GAP_MM && innerMm < NO_GAP_MM) return 'tight on both sides';
  return `${openingText(outerMm, display)} outside, ${openingText(innerMm, display)} inside`;
}

/** The side that a gap is looked at from, and how wide it is there. */
export function shownGap({ outerMm, innerMm }: JointOpening, showFace: 'outside' | 'inside' | 'both'): number {
  if (showFace === 'both') return Math.max(outerMm, innerMm);
  return showFace === 'inside' ? innerMm : outerMm;
}

/** The joint that shows the widest gap, from 0. */
export function widestJoint(joints: readonly JointOpening[], showFace: 'outside' | 'inside' | 'both'): number {
  const gaps = joints.map((joint) => shownGap(joint, showFace));
  return gaps.indexOf(Math.max(...gaps));
}

/** What became of one ring; rings are counted from 1. */
export function ringSentence(
  { ring, closes, joints }: SingleRing,
  showFace: 'outside' | 'inside' | 'both',
  display: Display,
): string {
  const name = `Ring ${countText(ring + 1)}`;
  if (!closes) {
    return `${name} will not close: pulled up, a joint would still stand open, or a stave stand proud, by more than ${lengthText(WILL_NOT_CLOSE_MM, display)}.`;
  }
  const widest = widestJoint(joints, showFace);
  const gap = shownGap(joints[widest] ?? { outerMm: 0, innerMm: 0 }, showFace);
  const place = showFace === 'both' ? 'on one side or the other' : showFace;
  if (gap < NO_GAP_MM) return `${name}: every joint is tight ${showFace === 'both' ? 'on both sides' : place}.`;
  return `${name} shows its widest gap at ${jointName(widest)}: ${gapText(gap, display)} ${place}.`;
}

const MOST_LISTED = 4;

/** Which joints are closed last, and how. */
export function closingSentence(assembly: Assembly, sides: number): string {
  switch (assembly.by) {
    case 'allAtOnce':
      return `All ${sides} joints are closed at once; joint ${sides} is where the last stave meets the first.`;
    case 'oneByOne': {
      const first = sides - assembly.freeJoints;
      const last = Array.from({ length: assembly.freeJoints }, (_, k) => `${first + k + 1}`);
      const which = last.length > MOST_LISTED ? `${first + 1} to ${sides}` : listText(last);
      return `The staves are glued one by one; joints ${which} are closed last and take up what is left.`;
    }
    case 'twoHalves':
      return `Two halves are glued first; joints ${sides / 2} and ${sides} between them are trued and closed last.`;
  }
}

/** Joints that differ by less than this share of the widest fare alike. */
const ALIKE = 0.1;

/** How the joints compare over all rings. `p95Mm`: the gap that 95 of 100 rings stay under, joint by joint. */
export function jointsSentence(p95Mm: readonly number[], display: Display): string {
  const most = Math.max(...p95Mm);
  const least = Math.min(...p95Mm);
  const gap = (mm: number): string => gapText(mm, display);
  const [leastText, mostText] = comparedGaps(least, most, display);
  if (most < NO_GAP_MM) return 'At every joint 95 of 100 rings are tight.';
  if (most > WILL_NOT_CLOSE_MM && least > WILL_NOT_CLOSE_MM)
    return `At every joint more than 5 of 100 rings gape ${gap(most)}.`;
  if (most - least <= ALIKE * most) {
    const range = gap(least) === gap(most) ? gap(most) : `${gap(least)} to ${gap(most)}`;
    return `All joints fare alike: at each, 95 of 100 rings stay under ${range}.`;
  }
  const widest = p95Mm.indexOf(most);
  const tightest = p95Mm.indexOf(least);
  const wide =
    most > WILL_NOT_CLOSE_MM
      ? `more than 5 of 100 rings gape ${gap(most)} there`
      : `95 of 100 rings stay under ${mostText} there`;
  return `${capital(jointName(widest))} gapes most: ${wide}; ${jointName(tightest)} least: ${leastText}.`;
}

/** One row a joint; `ring` is the ring that is looked at, if there is one. */
export function jointTable(p95Mm: readonly number[], ring: SingleRing | null, display: Display): TextTable {
  const side = (mm: number): string => (mm < NO_GAP_MM ? 'touches' : gapText(mm, display));
  const isShown = ring?.closes === true;
  return {
    head: [
      'Joint',
      'Staves',
      ...(isShown ? [`Ring ${countText(ring.ring + 1)}, outside`, `Ring ${countText(ring.ring + 1)}, inside`] : []),
      'All rings, 95 of 100 under',
    ],
    rows: p95Mm.map((mm, joint) => {
      const opening = ring?.joints[joint];
      return [
        joint + 1 === p95Mm.length ? `${joint + 1}, last to first` : `${joint + 1}`,
        `${joint + 1} and ${((joint + 1) % p95Mm.length) + 1}`,
        ...(isShown && opening ? [side(opening.outerMm), side(opening.innerMm)] : []),
        gapText(mm, display),
      ];
    }),
  };
}

const EXCESS_UNCERTAINTY_MM = 0.001;

/** How far the quick rule is off; `excess` is null where it has no say. */
export function touchSentence(excess: TouchExcess | null, display: Display): string {
  if (excess === null) {
    return 'Rings assembled this way are always worked out by contact; the quick rule, touch, has no say.';
  }
  const { trials, meanMm, p95Mm } = excess;
  const [mean, most] = [meanMm, p95Mm].map((mm) => gapText(mm, display, EXCESS_UNCERTAINTY_MM));
  const rings = `on the same ${countText(trials)} rings`;
  if (p95Mm < EXCESS_UNCERTAINTY_MM) return `Touch, the quick rule, agrees with contact here (${rings}).`;
  const average = Number.parseFloat(mean ?? '') === 0 ? 'no wider on average, but' : `${mean} too wide on average, and`;
  return `Touch, the quick rule, would make the widest gap ${average} at least ${most} too wide in 5 of 100 (${rings}).`;
}

/** A sentence that begins with a method's name, where it is plain which method is spoken of. */
export function withoutName(sentence: string, name: string): string {
  const prefix = `“${name}”: `;
  return sentence.startsWith(prefix) ? capital(sentence.slice(prefix.length)) : sentence;
}
