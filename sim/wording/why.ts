/** Why this ring, made this way, shows gaps: by its own budget, for somebody who has never cut a mitre. */
import type { SourceBudget, SourceEffect } from '../budget/budget';
import { type SharedError, sharedError } from '../decide/shared-error';
import { type RingGeometry, ringGeometry } from '../geometry/ring';
import { NO_GAP_MM } from '../geometry/thresholds';
import type { Method, Piece, Project } from '../project/document';
import { aboutLengthText, angleText, countWord, type Display, gapText, lengthText } from './figures';
import { isMostOfTheGap, tellingSources } from './gap-origin';
import { PLAIN_CAUSES } from './plain-causes';

/** A twentieth of a degree: finer than most scales on a saw are read. */
const SHOWN_ERROR_DEG = 0.05;
/** Office paper of 80 g/m²; common practice. */
const PAPER_MM = 0.1;
/** Gaps closer than a hundredth of a mm are told to a thousandth. */
const FINE_MM = 0.005;

/** @param budget null while it is not worked out: then no cause is named */
export function whySentences({ piece, display }: Project, method: Method, budget: SourceBudget | null): string[] {
  const cause = budget === null ? undefined : tellingSources(budget)[0];
  const shared = cause === undefined ? null : errorShown(ringGeometry(piece), piece, method, cause);
  return [
    ringSentence(piece),
    ...(budget === null ? [] : [causeSentence(budget, cause)]),
    ...(cause === undefined ? [] : [shared === null ? PLAIN_CAUSES[cause.source].how : addsUp(piece, shared, display)]),
    closingSentence(piece, method, shared, display),
    ...(budget === null || cause === undefined ? [] : [perfectSentence(budget, cause, display)]),
  ];
}

/** What the angles of any ring of this shape come to; they add up as cut only where the pieces do not lean. */
function ringSentence({ sides, slopeDeg }: Piece): string {
  if (slopeDeg > 0 && slopeDeg < 90) {
    return (
      `Each of the ${2 * sides} sawn faces of these ${sides} leaning pieces is cut at two angles at once; ` +
      `seen from above, the turns at the ${sides} corners must add up to exactly 360°.`
    );
  }
  const ring = slopeDeg === 90 ? 'frame' : 'ring';
  return `A ${ring} of ${sides} pieces has ${2 * sides} sawn faces, and their angles must add up to exactly 360°.`;
}

function causeSentence(budget: SourceBudget, cause: SourceEffect | undefined): string {
  if (budget.sources.length === 0) return 'No error is expected of the tools here, and so no gap.';
  if (cause === undefined) return 'No single cause stands out here: small errors of many kinds come together.';
  const { what } = PLAIN_CAUSES[cause.source];
  if (isMostOfTheGap(budget, cause)) return `Most of the gap comes from ${what}.`;
  return `The largest single cause of the gap is ${what}.`;
}

/** To as many digits as tell the two widths apart. */
function perfectSentence(
  { showGapP95Mm }: SourceBudget,
  { showGapP95WithoutMm }: SourceEffect,
  display: Display,
): string {
  const texts = (offMm?: number): string[] =>
    [showGapP95Mm, showGapP95WithoutMm].map((mm) => gapText(mm, display, offMm));
  const [now = '', without = ''] = new Set(texts()).size > 1 ? texts() : texts(FINE_MM);
  if (without.startsWith('over')) return `Even if that were perfect, more than 5 of 100 would show a gap ${without}.`;
  return `If that were perfect, 95 of 100 would show no gap over ${without}, in place of ${now}.`;
}

/** An error that can be shown by a sheet of paper: one that is in every cut alike and that this ring does not plane away. */
function errorShown(
  geometry: RingGeometry,
  { showFace }: Piece,
  { tilt, sequence, assembly }: Method,
  { source }: SourceEffect,
): SharedError | null {
  if (assembly.by === 'twoHalves') return null;
  const shared = sharedError(geometry, showFace, SHOWN_ERROR_DEG, assembly);
  const isTilt = source === 'tiltShared' && tilt.reset === 'once' && shared.setting === 'tilt';
  // Turned end for end, the swing is found once for either side.
  const isSwing = source === 'guideSetting' && sequence === 'flipFace' && shared.setting === 'swing';
  return isTilt || isSwing ? shared : null;
}

function addsUp({ sides }: Piece, { mouthMm }: SharedError, display: Display): string {
  const paper = lengthText(PAPER_MM, display, { uncertaintyMm: 0.1 });
  const arm = aboutLengthText(PAPER_MM / Math.tan((SHOWN_ERROR_DEG * Math.PI) / 180), display);
  const mouth = lengthText(Math.abs(mouthMm), display, { uncertaintyMm: 0.1 });
  return (
    `Whatever it is off by is in all ${2 * sides} faces and adds up: ${angleText(SHOWN_ERROR_DEG)}, as little as a ` +
    `sheet of paper (${paper}) under the end of a block ${arm} long, leaves the last joint ${mouth} open while all the others are tight.`
  );
}

/** Where what is left goes, the way this ring is put together. */
function closingSentence({ sides }: Piece, { assembly }: Method, shared: SharedError | null, display: Display): string {
  const gap =
    shared === null ? null : gapText(shared.jointGapMm, display, shared.jointGapMm < 0.1 ? NO_GAP_MM : undefined);
  switch (assembly.by) {
    case 'allAtOnce':
      return `Pulled together at once, all ${sides} joints share what is left${gap === null ? '' : `: ${gap} each`}.`;
    case 'oneByOne':
      return (
        `Glued piece by piece, only the last ${countWord(assembly.freeJoints)} joints can still give, and they take ` +
        `all that is left${gap === null ? '' : `: ${gap.startsWith('over') ? gap : `up to ${gap}`}`}.`
      );
    case 'twoHalves':
      return (
        'Two halves are glued first and their ends planed flat, which takes the errors of the angles out where they meet; ' +
        'what shows is how flat the sawn and planed faces are.'
      );
  }
}
