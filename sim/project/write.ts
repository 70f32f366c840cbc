/** From the document to the text of its file. */
import type { Project } from './document';

/** Every key a file may hold, in the order in which files hold them. */
const KEYS_IN_ORDER = [
  'format version title display piece stock limits costs methods run explain',
  'sides slopeDeg grain size by mm heightMm thicknessMm showFace insert diameterMm clearanceMm',
  'wood stripLengthMm stripCount trimMm holdMm thicknessSigmaMm cupMm edgeTaperDeg',
  'showGapMm hiddenGapMm remedyGapMm',
  'batch stockPerRing testStockPerRound ratePerHour remedyMinutes assemblyMinutes',
  'name sequence wideFace tilt guide width blade assembly test minutes',
  'biasDeg sharedDeg shape sideDeg perCutDeg reset aimDeg',
  'zeroDeg settingDeg slotDeg seatMm faceMm',
  'sharedMm perCutMm driftMeanMm driftSigmaMm chipChance chipMeanMm',
  'plateMm collarMm kerfMm kerfSigmaMm stiffnessNPerMm forceMeanN forceSigmaN forceWithinCutN',
  'snagChance snagMeanN recutAboveMm',
  'freeJoints ends pullUpMm truingMm',
  'kind maxRounds readingMm stopWhenMm dialDeg dialShare armMm',
  'setUp perCut perTestRound',
  'trials seed rule settle relative',
  'client closing method show drawing why dots making eye season remains',
].flatMap((line) => line.split(' '));

/** Reading it back gives the same project, and writing that the same text. */
export function writeProject(project: Project): string {
  return `${JSON.stringify(project, KEYS_IN_ORDER, 2)}\n`;
}
