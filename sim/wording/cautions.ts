/**
 * The usual cautions, for every surface that shows cuts: which of them a piece and its methods ask for, in the order of
 * the work. All are common practice of the trade. No sentence is longer than some twenty words, for they are read aloud.
 */
import { ringGeometry } from '../geometry/ring';
import type { Method, Project } from '../project/document';
import { nearestPreset } from '../project/presets';
import { type Display, lengthText } from './figures';

export const CAUTIONS_TITLE = 'Before you cut';

/** Stands over every list of them, and alone where cuts are shown and the list is not. */
export const FIRST_CAUTION = 'Usual cautions; your machine’s manual, local rules and trained practice go first.';

/** What the command line says in place of the list. */
export const CAUTIONS_COMMAND_LINE = `${FIRST_CAUTION} “ringtrue stock FILE” prints them all.`;

export interface CautionGroup {
  title: string;
  sentences: string[];
}

/** A hand comes no nearer to the blade, and what is held is no shorter; common practice. */
const HAND_MM = 150;

/** What is shorter is pushed with a stick; common practice. */
const PUSHED_MM = 300;

/** In inches as the trade rounds them. */
const roundLength = (mm: number, display: Display): string =>
  display === 'inch' ? `${Math.round(mm / 25)} in` : `${mm} mm`;

/** Why the hold length is too short, or null where it is long enough. Goes before everything else. */
export function shortHoldWarning({ piece, stock, display }: Project): string | null {
  const { holdMm } = stock;
  if (holdMm >= HAND_MM) return null;
  const length = (mm: number): string => lengthText(mm, display);
  const part = piece.grain === 'alongRing' ? 'short' : 'narrow';
  return (
    `Danger: only ${length(holdMm)} is left to hold at the last cut. ` +
    `A part so ${part} cannot be held safely: fingers come too near the blade. ` +
    `Leave at least ${length(HAND_MM)}.`
  );
}

/** What decides which cautions are needed. */
interface Needs {
  project: Project;
  isRip: boolean;
  isTilted: boolean;
  isTapered: boolean;
  isNarrow: boolean;
  hasEndGrain: boolean;
  onTableSaw: readonly Method[];
  onMitreSaw: readonly Method[];
  methods: readonly Method[];
}

function needsOf(project: Project, methods: readonly Method[]): Needs {
  const { piece } = project;
  const { bevelDeg, crosscutDeg, staveWidthMm, staveWidthMidMm } = ringGeometry(piece);
  const isRip = piece.grain === 'upStave';
  const isMitreSaw = (method: Method): boolean => nearestPreset(method, 'blade')?.id === 'largeMitreSaw';
  return {
    project,
    isRip,
    isTilted: bevelDeg !== 0,
    isTapered: crosscutDeg !== 0,
    // By its narrow end.
    isNarrow: 2 * staveWidthMidMm - staveWidthMm < HAND_MM,
    hasEndGrain: !isRip || piece.slopeDeg === 90,
    // Nothing but a table saw rips.
    onTableSaw: methods.filter((method) => isRip || !isMitreSaw(method)),
    onMitreSaw: methods.filter(isMitreSaw),
    methods,
  };
}

const when = (isNeeded: boolean, ...sentences: string[]): string[] => (isNeeded ? sentences : []);

function atTheStart({ isRip, onTableSaw, onMitreSaw }: Needs): string[] {
  // Figures of one's own do not say what carries the work, so it may be a sled.
  const hasSled =
    !isRip && onTableSaw.some((method) => ['sled', undefined].includes(nearestPreset(method, 'guide')?.id));
  return [
    'Protect eyes, ears and lungs, and run the dust extraction.',
    'No gloves, no loose sleeves, nothing that dangles; tie long hair back.',
    'Unplug the saw before you change the blade.',
    ...when(onTableSaw.length > 0, 'On a table saw, keep guard and riving knife in place.'),
    ...when(
      hasSled,
      'Make a sled so that the riving knife stays on and runs in the sled’s slot.',
      'Where the saw’s guard cannot pass, give the sled a cover, and a block where the blade comes out.',
    ),
    ...when(onMitreSaw.length > 0 && isRip, 'Never rip on a mitre saw: use a table saw.'),
    ...when(onMitreSaw.length > 0 && !isRip, 'On a mitre saw, the guard must swing freely; never tie it back.'),
  ];
}

function settingTheSaw({ isRip, isTilted, onTableSaw, onMitreSaw, methods }: Needs): string[] {
  const onTable = onTableSaw.length > 0;
  const onMitre = onMitreSaw.length > 0 && !isRip;
  const stops = isRip ? [] : methods.filter(({ width }) => width.by === 'fixedStop');
  const leansAway = isTilted && stops.every(({ wideFace }) => wideFace === 'up');
  return [
    'The blade stands still and the power is isolated before gauge, hand or test ring goes near it.',
    ...when(onTable, 'Set the height of the blade before you start it.'),
    ...when(
      onTable && isTilted,
      'With the power isolated, turn the tilted blade by hand: it must clear everything around it.',
    ),
    ...when(onMitre, 'With the power isolated, lower the mitre saw’s head once: the blade must clear fence and guard.'),
    ...when(
      isRip && isTilted,
      'Rip with the blade tilted away from the fence; tilted towards it, it traps the stave.',
      'The stave between fence and blade then lies with its wide face up.',
    ),
    ...when(
      stops.length > 0,
      `The stop stands on the side of the blade where the stave comes off${leansAway ? ', the side it leans away from' : ''}.`,
      'The strip touches the stop before the cut only.',
      'Use a block that ends ahead of the blade, or swing the stop away.',
    ),
    ...when(!isRip && onTable && stops.length === 0, 'Slide the rip fence well away from the blade.'),
  ];
}

function atTheCut(needs: Needs): string[] {
  const { isRip, isTilted, isTapered, isNarrow, onMitreSaw, methods, project } = needs;
  const { stock, display } = project;
  const hold = lengthText(stock.holdMm, display, { fractions: true });
  const isUnder = isTilted && !isRip && methods.some(({ wideFace }) => wideFace === 'down');
  const pushed = roundLength(PUSHED_MM, display);
  return [
    isRip
      ? `Start from boards wide enough to hold: stop when ${hold} of the width is left.`
      : `Start from strips long enough to hold: stop when ${hold} is left in hand.`,
    ...when(methods.some(isTested), 'Cut test pieces from strips as long as those of the piece.'),
    isRip
      ? 'Never cut free-hand: the board lies against the fence for the whole cut.'
      : 'Never cut free-hand: the strip lies against gauge, sled or fence for the whole cut.',
    `Keep your hands at least ${roundLength(HAND_MM, display)} from the blade.`,
    ...when(isRip && isTapered, 'Rip tapered staves in a jig that clamps them.'),
    ...when(
      isRip,
      `Use push sticks for the last ${pushed}, and for all of a board that is shorter.`,
      'Push the stave right past the blade; nothing may be trapped between fence and blade.',
      'Stand beside the path of the board: it can be thrown back.',
    ),
    ...when(!isRip && isNarrow, 'Hold narrow work with a clamp or a hold-down, and have push sticks within reach.'),
    ...when(!isRip, 'Nothing may be trapped between stop and blade, or between fence and blade.'),
    ...when(isTilted, 'Never let a stave or wedge lie trapped under the tilted blade.'),
    ...when(isUnder, 'With its wide face down, a stave comes off under the blade: leave it room to slide clear.'),
    ...when(
      !isRip && onMitreSaw.length > 0,
      'On a mitre saw, clamp the strip to the fence, and never reach across the blade.',
      'Let its blade reach full speed before the cut, and stop before you lift it.',
    ),
  ];
}

const isTested = ({ test }: Method): boolean => test.kind !== 'none' && test.maxRounds > 0;

const AFTER_THE_CUT: readonly string[] = [
  'Clear wedges and offcuts only when the blade has stopped.',
  'Close rings, and test how far a mouth stands open, away from the saw.',
];

function ofTheJoint({ hasEndGrain }: Needs): string[] {
  return [
    ...when(hasEndGrain, 'An end-grain mitre is weak even when it is tight: give it splines, a band or a base panel.'),
    'A joint that had to be filled is weaker still.',
    'Nothing here rates the strength of a joint.',
  ];
}

/**
 * The cautions for one piece made in the ways given, in the order of the work. `FIRST_CAUTION` goes before them.
 *
 * @param project one that can be computed
 */
export function cautionGroups(project: Project, methods: readonly Method[] = project.methods): CautionGroup[] {
  const needs = needsOf(project, methods);
  return [
    { title: 'You and the machine', sentences: atTheStart(needs) },
    { title: 'Setting the saw', sentences: settingTheSaw(needs) },
    { title: 'At the cut', sentences: atTheCut(needs) },
    { title: 'After the cut', sentences: [...AFTER_THE_CUT] },
    { title: 'The joint', sentences: ofTheJoint(needs) },
  ];
}

/** The same without their heads, what goes before everything else first. */
export function cautionsFor(project: Project, methods?: readonly Method[]): string[] {
  const short = shortHoldWarning(project);
  return [
    ...(short === null ? [] : [short]),
    FIRST_CAUTION,
    ...cautionGroups(project, methods).flatMap(({ sentences }) => sentences),
  ];
}

/** As the command line prints them. */
export function cautionsText(project: Project, methods: readonly Method[]): string {
  const groups = cautionGroups(project, methods).map(({ title, sentences }) => [
    title,
    ...sentences.map((said) => `- ${said}`),
  ]);
  return [`${CAUTIONS_TITLE}. ${FIRST_CAUTION}`, ...groups.map((lines) => lines.join('\n'))].join('\n');
}
