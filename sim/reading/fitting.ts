/** What no single value of a project shows: whether the values fit each other. Assumes that each is in its own range. */
import { pitchMm, type RingGeometry, ringGeometry, stripNeededMm } from '../geometry/ring';
import { TEST_KIND_NAMES } from '../project/choice-words';
import type { Blade, Method, Piece, Project, SizeBy } from '../project/document';
import { optionLabel } from '../project/fields';
import { METHOD } from '../project/method-keys';
import { type Problem, reckonedLength, safeText, typedLength } from '../project/problem';
import { testPieceProblems } from './test-piece';

/** Below this a length is rounding, not wood. */
const NOTHING_MM = 1e-6;

const SIZE_WORDS: Record<SizeBy, string> = {
  outsideFlats: 'across the outside flats',
  outsideCorners: 'across the outside corners',
  clearOpening: 'of clear opening',
  staveWidth: 'of stave width',
};

type Display = Project['display'];

/** @param display the unit on the page; a file has its lengths in mm, whatever it displays */
export function fittingProblems(project: Project, display: Display): Problem[] {
  const { piece, stock, methods } = project;
  const geometry = ringGeometry(piece);
  const found = pieceProblems(piece, geometry, display);
  const pieceStands = found.length === 0;
  if (stock.stripCount > piece.sides) {
    found.push({
      path: 'stock.stripCount',
      sentence:
        `Number of strips ${stock.stripCount} is above the ${piece.sides} staves. ` +
        `Give a whole number from 1 to ${piece.sides}.`,
    });
  }
  const names = new Set<string>();
  methods.forEach((method, index) => {
    const path = `methods[${index}]`;
    found.push(...nameProblems(method, path, names));
    found.push(...bladeProblems(method.blade, `${path}.blade`, display));
    const ways = waysProblems(piece, method, path);
    found.push(...ways);
    if (pieceStands && ways.length === 0) found.push(...testPieceProblems(piece, method, geometry, path, display));
  });
  if (pieceStands) found.push(...stripProblems(project, geometry, display));
  found.push(...explainProblems(project));
  return found;
}

function pieceProblems(piece: Piece, geometry: RingGeometry, display: Display): Problem[] {
  const { size, thicknessMm, slopeDeg, heightMm, insert } = piece;
  const typed = (mm: number): string => typedLength(mm, display);
  const given = `Size ${typed(size.mm)} ${SIZE_WORDS[size.by]}`;
  const remedy = 'Give a larger size, thinner or shorter staves, or less slope.';
  if (geometry.staveWidthMidMm <= NOTHING_MM) {
    const width = reckonedLength(geometry.staveWidthMidMm, display);
    const shape = `slope ${slopeDeg}° and height ${typed(heightMm)}`;
    const why = `with ${shape} they are ${width} wide at mid-height, not above 0`;
    return [{ path: 'piece.size.mm', sentence: `${given} leaves no staves: ${why}. ${remedy}` }];
  }
  const clearMm = geometry.clearOpeningNarrowMm;
  if (clearMm <= NOTHING_MM) {
    const shape = `slope ${slopeDeg}°, height ${typed(heightMm)} and thickness ${typed(thicknessMm)}`;
    const why = `with ${shape} the clear opening at the narrow end is ${reckonedLength(clearMm, display)}, not above 0`;
    return [{ path: 'piece.size.mm', sentence: `${given} leaves no opening: ${why}. ${remedy}` }];
  }
  if (insert !== undefined) {
    const neededMm = insert.diameterMm + insert.clearanceMm;
    if (clearMm < neededMm - NOTHING_MM) {
      const clear = reckonedLength(clearMm, display, 'down');
      const sentence =
        `Insert diameter ${typed(insert.diameterMm)} with ${typed(insert.clearanceMm)} clearance needs ` +
        `${reckonedLength(neededMm, display, 'up')}, but the clear opening at the narrow end is ${clear}. ` +
        `Give up to ${clear} together, or a larger size.`;
      return [{ path: 'piece.insert.diameterMm', sentence }];
    }
  }
  return [];
}

function nameProblems(method: Method, path: string, names: Set<string>): Problem[] {
  const name = method.name.trim();
  if (name === '') {
    return [{ path: `${path}.name`, sentence: 'Name of the method is empty. Give each method a name.' }];
  }
  if (!names.has(name)) {
    names.add(name);
    return [];
  }
  const sentence = `Another method is called “${safeText(name)}” already. Give each method a name of its own.`;
  return [{ path: `${path}.name`, sentence }];
}

function bladeProblems(blade: Blade, path: string, display: Display): Problem[] {
  const found: Problem[] = [];
  const typed = (mm: number): string => typedLength(mm, display);
  if (blade.plateMm >= blade.kerfMm) {
    found.push({
      path: `${path}.plateMm`,
      sentence:
        `Blade plate ${typed(blade.plateMm)} is not below the kerf, ${typed(blade.kerfMm)}. ` +
        `Give the thickness of the plate, above 0 and below ${typed(blade.kerfMm)}.`,
    });
  }
  const ratio = blade.collarMm / blade.diameterMm;
  if (ratio < 0.1 - 1e-9 || ratio > 0.5 + 1e-9) {
    const low = reckonedLength(0.1 * blade.diameterMm, display, 'up').replace(/ .*/, '');
    const high = reckonedLength(0.5 * blade.diameterMm, display, 'down');
    found.push({
      path: `${path}.collarMm`,
      sentence:
        `Blade collar ${typed(blade.collarMm)} is not between 0.1 and 0.5 of the blade diameter, ` +
        `${typed(blade.diameterMm)}. Give the diameter of the collar, from ${low} to ${high}.`,
    });
  }
  return found;
}

function waysProblems(piece: Piece, method: Method, path: string): Problem[] {
  const { sides } = piece;
  const found: Problem[] = [];
  const name = `“${safeText(method.name)}”`;
  if (method.sequence === 'swapSides' && piece.grain === 'upStave') {
    found.push({
      path: `${path}.sequence`,
      sentence:
        `“${optionLabel(METHOD.keys.sequence, 'swapSides')}” needs the grain around the ring, but it runs up the stave: for ${name} the ` +
        `staves are ripped, and a board is turned over between rips. Choose “${optionLabel(METHOD.keys.sequence, 'flipFace')}”.`,
    });
  }
  if (method.assembly.freeJoints > sides) {
    found.push({
      path: `${path}.assembly.freeJoints`,
      sentence:
        `Free joints ${method.assembly.freeJoints} is above the ${sides} joints of the ring. ` +
        `Give a whole number from 2 to ${sides}.`,
    });
  }
  if (sides % 2 === 0) return found;
  if (method.assembly.by === 'twoHalves') {
    found.push({
      path: `${path}.assembly.by`,
      sentence:
        `${name} is put together in two halves, which needs an even number of sides, but there are ${sides}. ` +
        'Choose joints closed all at once or one by one.',
    });
  }
  if (method.test.kind === 'halfRing' || method.test.kind === 'twoHalvesTogether') {
    found.push({
      path: `${path}.test.kind`,
      sentence:
        `${name} is tested with ${TEST_KIND_NAMES[method.test.kind]}, which needs an even number of sides, but there ` +
        `are ${sides}. Choose ${TEST_KIND_NAMES.fullRing}, ${TEST_KIND_NAMES.pair} or ${TEST_KIND_NAMES.none}.`,
    });
  }
  return found;
}

function explainProblems({ explain, methods }: Project): Problem[] {
  const name = explain?.method;
  if (name === undefined || methods.some((method) => method.name === name)) return [];
  const names = methods.map((method) => `"${safeText(method.name)}"`).join(', ');
  const sentence = `The method on the sheets is "${safeText(name)}", which the file does not have. Give one of ${names}.`;
  return [{ path: 'explain.method', sentence }];
}

/** One sentence for the strips, of the method that needs the most. */
function stripProblems(project: Project, geometry: RingGeometry, display: Display): Problem[] {
  const { piece, stock } = project;
  const length = stock.stripLengthMm;
  // A wrong number of strips has its own sentence already.
  if (length === undefined || stock.stripCount > piece.sides) return [];
  let neededMm = 0;
  let neediest: Method | undefined;
  for (const method of project.methods) {
    const mm = stripNeededMm(geometry, method.blade, method.sequence, stock);
    if (mm <= neededMm) continue;
    neededMm = mm;
    neediest = method;
  }
  if (neediest === undefined || length >= neededMm - NOTHING_MM) return [];
  const staves = Math.ceil(piece.sides / stock.stripCount);
  const pitch = reckonedLength(pitchMm(geometry, neediest.blade, neediest.sequence), display);
  const typed = (mm: number): string => typedLength(mm, display);
  const sentence =
    `Strip length ${typed(length)} is too short: “${safeText(neediest.name)}” needs ` +
    `${reckonedLength(neededMm, display, 'up')}, for trim ${typed(stock.trimMm)}, ${staves} staves of ${pitch} and ` +
    `${typed(stock.holdMm)} to hold. Give longer strips, or more of them.`;
  return [{ path: 'stock.stripLengthMm', sentence }];
}
