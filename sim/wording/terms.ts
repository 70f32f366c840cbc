/** Words a maker may not know, each explained in a sentence or two. Every surface that explains a word takes it from here. */
import { WILL_NOT_CLOSE_MM } from '../geometry/thresholds';

export interface Term {
  /** As it is asked about: "About the mouth". */
  name: string;
  meaning: string;
}

export const TERMS = {
  goodPiece: {
    name: 'a good piece',
    meaning:
      'Its widest gap that shows and its widest hidden gap are within their limits, and what must fit inside fits. “83 in 100” is how many of the simulated rings were good.',
  },
  showGap: {
    name: 'the gap that shows',
    meaning:
      'The widest opening of any joint on the side that is looked at, once the ring is pulled together. On the other side it is the hidden gap.',
  },
  p95: {
    name: '95 of 100 stay under',
    meaning:
      'The 95th percentile: of 100 rings 95 have their widest gap below it, 5 above. It tells what to reckon with on an unlucky day, without hanging on the single worst ring.',
  },
  interval: {
    name: 'the figures in brackets',
    meaning:
      'Where the figure would lie 95 times in 100 if all was simulated anew; more rings bring the two ends together. They do not say how well the errors given are those of your shop.',
  },
  settled: {
    name: 'how settled the figures are',
    meaning:
      'A quick preview comes first and moves with your hand; then all the rings asked for are simulated. Settled means that this is done, and more rings would move the figures little beyond what stands in brackets.',
  },
  dots: {
    name: 'the dots',
    meaning:
      'All simulated rings are put in order and every dot stands for an equal part of them, so that the dots to one side of a line can be counted as a chance.',
  },
  yieldCurve: {
    name: 'chance against the limit',
    meaning:
      'The yield: read from a limit up to a line to see how many of 100 pieces are good at that limit. The band along a line says how far it could be off.',
  },
  willNotClose: {
    name: 'rings that will not close',
    meaning: `Pulled up, a joint would still stand open, or a stave stand proud of its neighbour, by more than ${WILL_NOT_CLOSE_MM} mm. Such a ring counts as spoilt, and its gap is not told.`,
  },
  pieceTime: {
    name: 'the time for a good piece',
    meaning:
      'Set-up, cuts, tests, glue-up and putting right, with those spent on pieces that failed, for each piece that came out good.',
  },
  pieceCost: {
    name: 'the cost of a good piece',
    meaning:
      'Wood, time, test cuts, rework and spoilt pieces over many set-ups, divided by the pieces that came out good; in the money you count in.',
  },
  tightestOfAll: {
    name: 'the tightest of all',
    meaning: 'Of one piece made by each method, how often this one’s has the smallest gap.',
  },
  heldAgainst: {
    name: 'one method against another',
    meaning:
      'Both are simulated with the same luck, ring by ring, so that what remains between them comes from the methods. Plus and minus are this method less the other.',
  },
  mouth: {
    name: 'the mouth',
    meaning:
      'How far the last joint stands open at dry fit when all the others are closed; below 0 the last stave does not go in. Every error of the ring comes together in it.',
  },
  mouthAgainstGap: {
    name: 'the mouth and the gap',
    meaning:
      'Each dot is one ring: to the right its mouth at dry fit, upwards its widest gap after it is pulled together. Where the dots lie along a line the mouth foretells the gap; where they lie about, it does not.',
  },
  rings: {
    name: 'the ring that is drawn',
    meaning:
      'One of the simulated rings, pulled together, with its gaps drawn wider than they are by the factor said beside it; everything else is to scale.',
  },
  jointByJoint: {
    name: 'joint by joint',
    meaning:
      'For every joint the gap that 95 of 100 rings stay under there. Joints that are closed last take up what the others leave and are often the widest.',
  },
  budget: {
    name: 'what each source brings',
    meaning:
      'Left, the part of the spread of the worst gap that would go if the source were perfect; right, what 95 of 100 would then stay under. The longest bar is the error to work on first.',
  },
  alone: {
    name: 'alone and in all',
    meaning:
      'Alone: the part of the spread that a source brings by itself. In all: together with what it does only in company with others. Far apart, they say that errors act together.',
  },
  aim: {
    name: 'the aim',
    meaning:
      'A deliberate offset of the tilt from what the ring asks for. Gaps that are hidden may be wider than gaps that show, so a tilt set a little off can make more pieces good.',
  },
  accuracyNeeded: {
    name: 'the accuracy needed',
    meaning:
      'How small each error would have to become for the pieces wanted: first each by itself, the others as they are, then all together with least effort.',
  },
  contactRule: {
    name: 'contact and touch',
    meaning:
      'Contact: joints press on each other where they touch and share what is left over, as in a clamped ring; none can overlap. Touch: a quick reckoning in place of it for the preview, whose gaps come out too large or, at best, right.',
  },
  testWorth: {
    name: 'what test cuts are worth',
    meaning:
      'The same jobs are simulated with no test round, one round, two rounds and so on. A test costs wood and minutes and spoils fewer pieces; the cheapest number of rounds is the one to make.',
  },
  oneDegreeShows: {
    name: 'what 1° shows as',
    meaning:
      'How much the reading changes when the setting is off by one degree. The more it shows, the smaller the error that can be read.',
  },
  smallestTold: {
    name: 'the smallest error told',
    meaning:
      'An error of the setting smaller than this cannot be told from a right setting by this test piece, 19 times in 20.',
  },
  pitch: {
    name: 'strip for one stave',
    meaning: 'What one stave takes out of the strip: its width, and the wood that its cuts turn to dust or waste.',
  },
  tiltAndSwing: {
    name: 'tilt and swing',
    meaning:
      'Tilt leans the blade from square to the table; swing turns the gauge from square to the blade. Only a ring with sloped sides needs the swing.',
  },
} as const satisfies Record<string, Term>;

export type TermName = keyof typeof TERMS;

/** Heads of charts, panels and table columns, as the pages show them, and the word that explains each. */
export const TERM_OF_HEAD: Readonly<Record<string, TermName>> = {
  'Chance of a good piece against the limit': 'yieldCurve',
  'The widest gap that shows, ring by ring': 'dots',
  'Method by method': 'interval',
  'Gap that 95 of 100 stay under': 'p95',
  'Gap, 95 of 100 under': 'p95',
  'All rings, 95 of 100 under': 'p95',
  'If it were perfect, 95 of 100 under': 'p95',
  'Good enough': 'goodPiece',
  'Will not close': 'willNotClose',
  'Time for a good piece': 'pieceTime',
  'Cost of a good piece': 'pieceCost',
  'Tightest of all': 'tightestOfAll',
  'Better or worse than': 'heldAgainst',
  Against: 'heldAgainst',
  'One ring, joint by joint': 'rings',
  'Which joints gape, over all rings': 'jointByJoint',
  'The mouth at dry fit': 'mouth',
  'Mouth against gap': 'mouthAgainstGap',
  'What each source of error brings': 'budget',
  Share: 'budget',
  Alone: 'alone',
  'In all': 'alone',
  'Where to aim the tilt': 'aim',
  'How accurate each thing would have to be': 'accuracyNeeded',
  'Touch against contact': 'contactRule',
  'What each number of rounds comes to': 'testWorth',
  '1° shows as': 'oneDegreeShows',
  'Smallest error told': 'smallestTold',
  'Strip for one stave': 'pitch',
  'Saw settings': 'tiltAndSwing',
};

/** The explanation that belongs to a head as it is shown, a method's name at its end aside; null where it explains itself. */
export function termOfHead(head: string): Term | null {
  const key = head.replace(/ “.*”$/s, '');
  const name = Object.hasOwn(TERM_OF_HEAD, key) ? TERM_OF_HEAD[key] : undefined;
  return name === undefined ? null : TERMS[name];
}
