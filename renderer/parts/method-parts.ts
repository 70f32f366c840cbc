/** What a method is put together from, in the order of the work, and the figures behind each choice. */

import { SEQUENCE_WORDS } from '../../sim/project/choice-words';
import type { Method } from '../../sim/project/document';
import type { MethodPart } from '../../sim/project/preset';
import { WIDE_FACE_WORDS } from '../../sim/wording/method-differences';
import type { Choice } from '../inputs/field-props';

export interface FigureField {
  key: string;
  /** Named choices in place of a number. */
  choices?: { label: string; help?: string; options: readonly Choice<string>[] };
  /** What the figure stands for when it is left empty. */
  whenEmpty?: string;
}

export interface Part {
  name: MethodPart;
  question: string;
  figures: readonly FigureField[];
}

/** A part whose keys are the method's own. */
interface PartOf<Name extends MethodPart> extends Part {
  name: Name;
  figures: readonly (FigureField & { key: keyof Method[Name] })[];
}

const tilt = {
  name: 'tilt',
  question: 'How the tilt is set',
  figures: [
    { key: 'sharedDeg' },
    {
      key: 'shape',
      choices: {
        label: 'What that error means',
        options: [
          { value: 'normal', label: 'Spread', note: 'two settings in three fall within it' },
          { value: 'uniform', label: 'Bounds', note: 'anywhere up to it, never beyond' },
        ],
      },
    },
    { key: 'biasDeg' },
    { key: 'sideDeg' },
    { key: 'perCutDeg' },
    {
      key: 'reset',
      choices: {
        label: 'The tilt is set',
        help: 'Set once, its error is the same in every cut and adds up around the ring; set anew, each cut has its own and they partly cancel.',
        options: [
          { value: 'once', label: 'Once for the ring' },
          { value: 'everyCut', label: 'Anew for every cut' },
        ],
      },
    },
    { key: 'aimDeg' },
  ],
} as const satisfies PartOf<'tilt'>;

const guide = {
  name: 'guide',
  question: 'What carries the work',
  figures: [{ key: 'zeroDeg' }, { key: 'settingDeg' }, { key: 'slotDeg' }, { key: 'seatMm' }, { key: 'faceMm' }],
} as const satisfies PartOf<'guide'>;

const width = {
  name: 'width',
  question: 'What fixes the stave width',
  figures: [
    {
      key: 'by',
      choices: {
        label: 'Width from',
        help: 'A line marked once and a stop hold for all staves alike; a fresh mark for each brings an error of its own.',
        options: [
          { value: 'markedLine', label: 'A marked line' },
          { value: 'fixedStop', label: 'A fixed stop or fence' },
          { value: 'markedEach', label: 'A fresh mark for each' },
        ],
      },
    },
    { key: 'sharedMm' },
    { key: 'perCutMm' },
    { key: 'driftMeanMm' },
    { key: 'driftSigmaMm' },
    { key: 'chipChance' },
    { key: 'chipMeanMm' },
  ],
} as const satisfies PartOf<'width'>;

const blade = {
  name: 'blade',
  question: 'Blade',
  figures: [
    { key: 'diameterMm' },
    { key: 'plateMm' },
    { key: 'collarMm' },
    { key: 'kerfMm' },
    { key: 'kerfSigmaMm' },
    { key: 'stiffnessNPerMm', whenEmpty: 'from the plate' },
    { key: 'forceMeanN' },
    { key: 'forceSigmaN' },
    { key: 'forceWithinCutN' },
    { key: 'snagChance' },
    { key: 'snagMeanN' },
    { key: 'recutAboveMm', whenEmpty: 'no recuts' },
  ],
} as const satisfies PartOf<'blade'>;

const assembly = {
  name: 'assembly',
  question: 'How the ring is put together',
  figures: [
    {
      key: 'by',
      choices: {
        label: 'Joints closed',
        help: 'Closed all at once, joints share what is left over. One by one, those closed last take it up; in two halves, the two joints between them, which can be trued first.',
        options: [
          { value: 'allAtOnce', label: 'All at once' },
          { value: 'oneByOne', label: 'One by one' },
          { value: 'twoHalves', label: 'In two halves' },
        ],
      },
    },
    { key: 'freeJoints' },
    {
      key: 'ends',
      choices: {
        label: 'Ends of the staves',
        help: 'Held flush, no stave can slide along its neighbour while the ring closes. Left free, staves may slide a little to close a joint, and the uneven ends are trimmed after.',
        options: [
          { value: 'free', label: 'Left free, trimmed after' },
          { value: 'flush', label: 'Held flush' },
        ],
      },
    },
    { key: 'pullUpMm' },
    { key: 'truingMm' },
  ],
} as const satisfies PartOf<'assembly'>;

const test = {
  name: 'test',
  question: 'Test cuts',
  figures: [
    {
      key: 'kind',
      choices: {
        label: 'Test piece',
        help: 'What is cut in scrap, closed dry and read before the piece is cut.',
        options: [
          { value: 'none', label: 'None' },
          { value: 'fullRing', label: 'A whole ring' },
          { value: 'halfRing', label: 'Half a ring' },
          { value: 'twoHalvesTogether', label: 'Two halves together' },
          { value: 'pair', label: 'A pair' },
        ],
      },
    },
    { key: 'maxRounds' },
    { key: 'readingMm' },
    { key: 'stopWhenMm' },
    { key: 'dialDeg' },
    { key: 'dialShare' },
    { key: 'armMm', whenEmpty: 'the stave width' },
  ],
} as const satisfies PartOf<'test'>;

export const PARTS_BEFORE_SEQUENCE: readonly Part[] = [tilt, guide, width, blade];
export const PARTS_AFTER_SEQUENCE: readonly Part[] = [assembly, test];

export const SEQUENCES: readonly Choice<Method['sequence']>[] = [
  { value: 'flipFace', label: SEQUENCE_WORDS.flipFace, note: 'one cut parts two staves' },
  { value: 'swapSides', label: SEQUENCE_WORDS.swapSides, note: 'two cuts a stave, the show face stays up' },
];

export const WIDE_FACES: readonly Choice<Method['wideFace']>[] = [
  { value: 'down', label: WIDE_FACE_WORDS.down },
  { value: 'up', label: WIDE_FACE_WORDS.up },
];

export const MINUTES = ['setUp', 'perCut', 'perTestRound'] as const satisfies readonly (keyof Method['minutes'])[];
