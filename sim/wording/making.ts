/** What is done about the gaps, in a client's terms and from the method's own figures, never from a preset's text. */
import { ringGeometry } from '../geometry/ring';
import type { Method, Project } from '../project/document';
import type { MethodResult } from '../run/prediction';
import { aboutLengthText, angleText, countWord, type Display, lengthText, limitInSentence } from './figures';

/** Nearly all of what is normally spread lies within two standard deviations. */
const NEARLY_ALL = 2;

/** The blade, the guide, the width, the test cuts and the gluing, in the order of the work. */
export function makingSentences({ piece, display }: Project, method: Method, result: MethodResult): string[] {
  const isFlat = piece.slopeDeg === 90;
  const { kind, maxRounds } = method.test;
  return [
    ...(isFlat ? [] : [tiltSentence(method)]),
    guideSentence(method, ringGeometry(piece).crosscutDeg > 0, piece.grain === 'upStave', display),
    widthSentence(method, display),
    ...(kind === 'none' || maxRounds === 0 ? [] : [testSentence(method, result, isFlat)]),
    assemblySentence(method, piece.sides, display),
  ];
}

/** "about 0.15°", "about 0.06°": no finer than a person would say it. */
function withinText(deg: number): string {
  return `about ${angleText(Number(deg.toPrecision(deg < 0.1 ? 1 : 2)), 'decimal', 4)}`;
}

function tiltSentence({ tilt }: Method): string {
  const { shape, sharedDeg, biasDeg, reset } = tilt;
  const within = Math.abs(biasDeg) + (shape === 'uniform' ? sharedDeg : NEARLY_ALL * sharedDeg);
  const anew = reset === 'everyCut' ? ', anew for every cut' : '';
  if (within === 0) return `The saw blade is set to its angle as exactly as can be told${anew}.`;
  return `The saw blade is set to its angle to within ${withinText(within)}${anew}.`;
}

/** A swing that must be found adds its own error to how square the guide stands. */
function guideSentence({ guide }: Method, isSwung: boolean, isRipped: boolean, display: Display): string {
  const { zeroDeg, settingDeg, slotDeg, faceMm } = guide;
  const within = NEARLY_ALL * Math.hypot(zeroDeg, slotDeg, isSwung || isRipped ? settingDeg : 0);
  const held = within === 0 ? 'holds it true' : `holds its direction to within ${withinText(within)}`;
  const guided = isRipped ? 'The boards run along' : 'The wood is carried past the blade against';
  return `${guided} a straight guide ${aboutLengthText(faceMm, display)} long, which ${held}.`;
}

function widthSentence({ width }: Method, display: Display): string {
  const alike = (mm: number): string => (mm === 0 ? 'alike' : `alike to within about ${lengthText(mm, display)}`);
  const { by, sharedMm, perCutMm, driftMeanMm, driftSigmaMm, chipChance } = width;
  switch (by) {
    case 'markedLine':
      return `The pieces are cut to marked lines by eye, ${alike(NEARLY_ALL * perCutMm)}.`;
    case 'markedEach':
      return `Each piece is marked by itself and cut to its line, ${alike(NEARLY_ALL * Math.hypot(sharedMm, perCutMm))}.`;
    case 'fixedStop': {
      const creeps = driftMeanMm !== 0 || driftSigmaMm > 0 ? ['it may creep a little'] : [];
      const chips = chipChance > 0 ? ['a chip may get caught at it'] : [];
      const but = [...creeps, ...chips];
      const said = `A fixed stop makes all pieces equally wide, ${alike(NEARLY_ALL * perCutMm)}`;
      return `${said}${but.length === 0 ? '' : `; ${but.join(', and ')}`}.`;
    }
  }
}

const TEST_WORDS = {
  fullRing: 'a whole ring of scrap wood is cut and put together dry',
  halfRing: 'half a ring of scrap wood is cut and put together dry',
  twoHalvesTogether: 'two half rings of scrap wood are cut and put together dry',
  pair: 'two pieces of scrap wood are cut and held to a known angle',
} as const;

function testSentence({ test, tilt }: Method, { prediction }: MethodResult, isFlat: boolean): string {
  const what = test.kind === 'none' ? '' : TEST_WORDS[test.kind];
  const often =
    test.maxRounds === 1 ? '' : `, up to ${test.maxRounds === 2 ? 'twice' : `${countWord(test.maxRounds)} times`}`;
  const said = `First ${what}${often}, and the saw is put right by what it shows`;
  const beforeDeg = tilt.shape === 'uniform' ? tilt.sharedDeg / Math.sqrt(3) : tilt.sharedDeg;
  const afterDeg = prediction.tiltSharedAfterTestDeg.sd;
  if (isFlat || tilt.reset === 'everyCut' || !(afterDeg < beforeDeg)) return `${said}.`;
  const [before, after] = [beforeDeg, afterDeg].map((deg) => angleText(deg, 'decimal', deg < 0.01 ? 3 : 2));
  return `${said}: the error of its angle goes from typically ${before} down to ${after}.`;
}

function assemblySentence({ assembly }: Method, sides: number, display: Display): string {
  const { by, freeJoints, ends, pullUpMm, truingMm } = assembly;
  const level = ends === 'flush' ? ', with the ends held level' : '';
  const pulled =
    pullUpMm > 0 ? ` Pulling it tight takes up to ${limitInSentence(pullUpMm, display)} out of each gap.` : '';
  switch (by) {
    case 'allAtOnce':
      return `All ${sides} joints are glued and pulled together at once${level}.${pulled}`;
    case 'oneByOne':
      return `The pieces are glued one after another; the last ${countWord(freeJoints)} joints are closed together${level}.${pulled}`;
    case 'twoHalves': {
      const flat = truingMm > 0 ? ` to within about ${lengthText(NEARLY_ALL * truingMm, display)}` : '';
      return `Two halves are glued first, their ends are planed flat${flat}, and then they are glued together${level}.${pulled}`;
    }
  }
}
