/** Ways of preparing the stock, of putting the ring together and of testing a setting. Lengths mm, angles degrees. */
import { assumed, type Preset, practice, published } from './preset';

const PLYWOOD =
  'EN 315: the thickness of a sanded panel varies by up to 0.6 mm, evenly spread a standard deviation of 0.17 mm';

export const STOCK_PRESETS: readonly Preset<'stock'>[] = [
  {
    id: 'planedHere',
    label: 'Jointed and planed here',
    explanation: 'Strips are flattened, planed and jointed in the shop just before they are cut.',
    figures: { thicknessSigmaMm: assumed(0.08), cupMm: assumed(0.005), edgeTaperDeg: assumed(0.01) },
  },
  {
    id: 'boughtPlaned',
    label: 'Bought planed',
    explanation: 'Boards are used as they come from the merchant, planed on all sides.',
    figures: { thicknessSigmaMm: assumed(0.15), cupMm: assumed(0.03), edgeTaperDeg: assumed(0.03) },
  },
  {
    id: 'handPlaned',
    label: 'Planed by hand',
    explanation: 'Strips are planed and shot by hand.',
    figures: { thicknessSigmaMm: assumed(0.2), cupMm: assumed(0.02), edgeTaperDeg: assumed(0.05) },
  },
  {
    id: 'sandedPlywood',
    label: 'Sanded plywood',
    explanation: 'Strips are ripped from a sanded panel.',
    figures: { thicknessSigmaMm: published(0.17, PLYWOOD), cupMm: assumed(0.01), edgeTaperDeg: assumed(0.01) },
  },
];

export const ASSEMBLY_PRESETS: readonly Preset<'assembly'>[] = [
  {
    id: 'tapeAndFold',
    label: 'Tape and fold',
    explanation: 'Staves are taped side by side, glued and folded up in one go, with bands around.',
    figures: {
      by: practice('allAtOnce'),
      freeJoints: practice(3),
      ends: practice('free'),
      pullUpMm: assumed(0.02),
      truingMm: assumed(0.03),
    },
  },
  {
    id: 'ratchetStrap',
    label: 'Ratchet strap',
    explanation: 'All joints are closed at once by a ratchet strap, which squeezes a little more out of each.',
    figures: {
      by: practice('allAtOnce'),
      freeJoints: practice(3),
      ends: practice('free'),
      pullUpMm: assumed(0.05),
      truingMm: assumed(0.03),
    },
  },
  {
    id: 'strapOnBoard',
    label: 'Strap on a flat board',
    explanation: 'All joints are closed at once while the ends are held flush on a board.',
    figures: {
      by: practice('allAtOnce'),
      freeJoints: practice(3),
      ends: practice('flush'),
      pullUpMm: assumed(0.05),
      truingMm: assumed(0.03),
    },
  },
  {
    id: 'oneByOne',
    label: 'One by one',
    explanation: 'Each stave is glued to the last and left to set; two staves and three joints close the ring.',
    figures: {
      by: practice('oneByOne'),
      freeJoints: practice(3),
      ends: practice('free'),
      pullUpMm: assumed(0.02),
      truingMm: assumed(0.03),
    },
  },
  {
    id: 'lastStaveLoose',
    label: 'One by one to the last stave',
    explanation: 'Everything but the last stave is glued and hard before it is fitted.',
    figures: {
      by: practice('oneByOne'),
      freeJoints: practice(2),
      ends: practice('free'),
      pullUpMm: assumed(0.02),
      truingMm: assumed(0.03),
    },
  },
  {
    id: 'twoHalves',
    label: 'Two halves, trued',
    explanation: 'Two half rings are glued first; their end faces are trued flat before the halves are closed.',
    figures: {
      by: practice('twoHalves'),
      freeJoints: practice(3),
      ends: practice('free'),
      pullUpMm: assumed(0.02),
      truingMm: assumed(0.03),
    },
  },
];

export const TEST_PRESETS: readonly Preset<'test'>[] = [
  {
    id: 'none',
    label: 'No test cuts',
    explanation: 'The setting is used as it is.',
    figures: {
      kind: practice('none'),
      maxRounds: practice(0),
      readingMm: assumed(0.1),
      stopWhenMm: assumed(0.3),
      dialDeg: assumed(0.01),
      dialShare: assumed(0.15),
    },
  },
  {
    id: 'dryRing',
    label: 'Whole ring in scrap',
    explanation: 'A ring is cut in scrap and closed dry; the mouth of the last joint is read.',
    figures: {
      kind: practice('fullRing'),
      maxRounds: practice(2),
      readingMm: assumed(0.1),
      stopWhenMm: assumed(0.3),
      dialDeg: assumed(0.01),
      dialShare: assumed(0.15),
    },
  },
  {
    id: 'halfRing',
    label: 'Half ring on a straightedge',
    explanation: 'Half a ring is closed dry and one end face held to a straightedge; the other end is read.',
    figures: {
      kind: practice('halfRing'),
      maxRounds: practice(2),
      readingMm: assumed(0.1),
      stopWhenMm: assumed(0.2),
      dialDeg: assumed(0.01),
      dialShare: assumed(0.15),
    },
  },
  {
    id: 'halvesTogether',
    label: 'Two halves held together',
    explanation: 'Two dry half rings are held together at one side and the opening read at the other.',
    figures: {
      kind: practice('twoHalvesTogether'),
      maxRounds: practice(2),
      readingMm: assumed(0.1),
      stopWhenMm: assumed(0.3),
      dialDeg: assumed(0.01),
      dialShare: assumed(0.15),
    },
  },
  {
    id: 'pairAgainstAngle',
    label: 'A pair against a known angle',
    explanation: 'Two offcuts are closed and held to a reference angle; the light at the end of the arm is read.',
    figures: {
      kind: practice('pair'),
      maxRounds: practice(3),
      readingMm: assumed(0.05),
      stopWhenMm: assumed(0.05),
      dialDeg: assumed(0.01),
      dialShare: assumed(0.15),
    },
  },
];
