/** What the figures of a project stand for, where their name alone may not say it. Keys are those of the table of fields. */
import type { NumberKey } from '../project/fields';

const FIELD_HELP: Readonly<Partial<Record<NumberKey, string>>> = {
  'piece.insert.clearanceMm':
    'Added to the diameter of what goes in; the ring’s clear opening must be at least both together.',
  'stock.stripLengthMm':
    'Of the strip that staves are cut from, one after another. Left empty, it is as long as the cuts need.',
  'stock.stripCount': 'Staves are shared out among so many strips; each strip pays for its own trimmed and held ends.',
  'stock.trimMm': 'Cut off first, so that the strip begins with a clean, true end.',
  'stock.holdMm':
    'The last piece in hand must not get shorter than this: it is what keeps fingers away from the blade.',
  'stock.thicknessSigmaMm':
    'How much the staves’ thickness varies; two in three lie within it of the mean, to either side.',
  'stock.cupMm': 'How hollow a strip is across one stave. A hollow face rocks on the table, and the cut with it.',
  'stock.edgeTaperDeg':
    'How far the two edges of a strip are from parallel; turned over, the strip passes it on to the joint.',
  'limits.showGapMm':
    'A gap is seen as a gap from about 0.1 mm at arm’s length. The line in the chart moves the same limit.',
  'limits.hiddenGapMm':
    'On the side nobody looks at a gap may be wider; beyond this it weakens the joint or lets light through.',
  'limits.remedyGapMm': 'Above its limit but below this a piece is reworked; beyond it is scrap.',
  'costs.batch': 'Made at one setting of the saw. The more there are, the less set-up and tests cost each.',
  'costs.stockPerRing': 'In the money you count in; the same for every method.',
  'costs.testStockPerRound': 'In the money you count in; the same for every method.',
  'costs.remedyMinutes': 'Spent on a ring whose gap is over its limit but can still be put right.',
  'costs.assemblyMinutes': 'Dry fit, glue and clamps for one ring.',
  'run.trials':
    'Each is one ring made anew with errors drawn by chance. Four times as many halve what stands in brackets.',
  'run.seed': 'The same seed gives the same rings, and so the same digits.',
  'methods[].tilt.biasDeg':
    'An error of the tilt that is known and stays: plus is too much tilt. A measured scale error belongs here.',
  'methods[].tilt.sharedDeg':
    'A shared error: one setting is off, and every cut made with it is off alike. In a ring of N staves it adds up 2 N times, so it is seldom a small matter.',
  'methods[].tilt.sideDeg': 'Cuts on the two sides of a stave may lean differently, all of one side alike.',
  'methods[].tilt.perCutDeg': 'What changes from one cut to the next and so partly cancels around the ring.',
  'methods[].tilt.aimDeg':
    'A deliberate offset of the tilt, to trade gaps that show for gaps that are hidden. 0 is no aim.',
  'methods[].guide.zeroDeg': 'How far the guide is off when it is set square; the same in every cut.',
  'methods[].guide.settingDeg':
    'How far off the swing is found on the guide’s scale; it only matters for rings with sloped sides.',
  'methods[].guide.slotDeg': 'The guide sits a little askew in its slot, anew at every cut.',
  'methods[].guide.seatMm': 'Dust or a bump holds one end of the work this far off the guide.',
  'methods[].guide.faceMm': 'The work lies against this length; the longer it is, the less a bump turns the work.',
  'methods[].width.sharedMm':
    'How far the mark or stop is set off; all staves come out alike, so this hardly opens a joint.',
  'methods[].width.perCutMm':
    'How far each cut misses the mark or the stop; staves of unequal width cannot close all joints.',
  'methods[].width.driftMeanMm':
    'With every stave the stop creeps this far; staves cut late differ from those cut early.',
  'methods[].width.driftSigmaMm': 'How much that creep varies from stave to stave.',
  'methods[].width.chipChance': 'The share of staves, 0 to 1, cut with a chip between the work and the stop.',
  'methods[].width.chipMeanMm': 'How much shorter such a stave comes out, on the mean.',
  'methods[].blade.diameterMm': 'With plate and collar it says how stiff the blade is at its rim.',
  'methods[].blade.plateMm': 'The thickness of the steel behind the teeth; a thin plate bends much more easily.',
  'methods[].blade.collarMm': 'The washer that clamps the blade; what reaches beyond it can bend.',
  'methods[].blade.kerfMm': 'The width of wood that a cut turns to dust.',
  'methods[].blade.kerfSigmaMm': 'How much that width varies from cut to cut.',
  'methods[].blade.stiffnessNPerMm':
    'Newtons of side force for each millimetre the rim gives way. Left empty, it is worked out from the plate.',
  'methods[].blade.forceMeanN': 'The steady push on the blade’s side, from feed or grain; it tilts every cut alike.',
  'methods[].blade.forceSigmaN': 'How much that push differs from cut to cut.',
  'methods[].blade.forceWithinCutN': 'How much it changes along one cut; it leaves the face hollow or round.',
  'methods[].blade.snagChance': 'The share of cuts, 0 to 1, in which the blade catches.',
  'methods[].blade.snagMeanN': 'The mean side force when it does.',
  'methods[].blade.recutAboveMm':
    'A snag that leaves a deeper mark than this is seen, and the cut is made anew. Left empty, none is.',
  'methods[].assembly.freeJoints':
    'When the last stave is glued in, so many joints can still give way and share what is left over; the earlier ones are fast.',
  'methods[].assembly.pullUpMm': 'Clamps squeeze a gap of up to this shut; wood and glue give that much.',
  'methods[].assembly.truingMm': 'How far off flat the end faces of two halves are after they have been planed.',
  'methods[].test.maxRounds': 'Cut, read, dial: at most so often before the piece is cut.',
  'methods[].test.readingMm': 'Two readings in three fall within it.',
  'methods[].test.stopWhenMm': 'A reading up to this, to either side, ends the test.',
  'methods[].test.dialDeg': 'How far each correction misses, however little is dialled.',
  'methods[].test.dialShare': 'What it misses besides, as a share: at 0.15, dialling 1° may come out 0.15° off.',
  'methods[].test.armMm':
    'A pair is read at the end of an arm this long: the stave’s width, or longer where a straightedge is clamped on.',
  'methods[].minutes.setUp': 'Setting the saw, the guide and the mark or stop, once for a batch.',
  'methods[].minutes.perCut': 'Placing the work, cutting, taking it away.',
  'methods[].minutes.perTestRound': 'Cutting a test piece, reading it, dialling.',
};

/** One or two sentences for the field at a key path such as `methods[2].blade.kerfMm`; undefined where none is needed. */
export function fieldHelp(path: string): string | undefined {
  return FIELD_HELP[path.replace(/\[\d+\]/g, '[]') as NumberKey];
}
