/** What no single value of a project shows: whether the values fit each other. Assumes that each is in its own range. */
import { pitchMm, type RingGeometry, ringGeometry, stripNeededMm } from '../geometry/ring';
import type { Blade, Method, Piece, Project, SizeBy } from '../project/document';
import { type Problem, safeText } from '../project/problem';
import { testPieceProblems } from './test-piece';

/** Below this a length is rounding, not wood. */
const NOTHING_MM = 1e-6;

const SIZE_WORDS: Record<SizeBy, string> = {
  outsideFlats: 'across the outside flats',
  outsideCorners: 'across the outside corners',
  clearOpening: 'of clear opening',
  staveWidth: 'of stave width',
};

const round = (mm: number): number => Number(mm.toFixed(2));

export function fittingProblems(project: Project): Problem[] {
  const { piece, stock, methods } = project;
  const geometry = ringGeometry(piece);
  const found = pieceProblems(piece, geometry);
  const pieceStands = found.length === 0;
  if (stock.stripCount > piece.sides) {
    found.push({
      path: 'stock.stripCount',
      sentence:
        `Number of strips ${stock.stripCount} is above the ${piece.sides} staves. ` +
        `Give a whole number from 1 to ${piece.sides}.`,
    });
  }
  const names = new Map<string, number>();
  methods.forEach((method, index) => {
    const path = `methods[${index}]`;
    found.push(...nameProblems(method, index, path, names));
    found.push(...bladeProblems(method.blade, `${path}.blade`));
    const ways = waysProblems(piece, method, path);
    found.push(...ways);
    if (pieceStands && ways.length === 0) found.push(...testPieceProblems(piece, method, geometry, path));
  });
  if (pieceStands) found.push(...stripProblems(project, geometry));
  found.push(...explainProblems(project));
  return found;
}

function pieceProblems(piece: Piece, geometry: RingGeometry): Problem[] {
  const { size, thicknessMm, slopeDeg, heightMm, insert } = piece;
  const given = `Size ${size.mm} mm ${SIZE_WORDS[size.by]}`;
  const remedy = 'Give a larger size, thinner or shorter staves, or less slope.';
  if (geometry.staveWidthMidMm <= NOTHING_MM) {
    const width = round(geometry.staveWidthMidMm);
    const why = `with slope ${slopeDeg}° and height ${heightMm} mm they are ${width} mm wide at mid-height, not above 0`;
    return [{ path: 'piece.size.mm', sentence: `${given} leaves no staves: ${why}. ${remedy}` }];
  }
  const clear = round(geometry.clearOpeningNarrowMm);
  if (geometry.clearOpeningNarrowMm <= NOTHING_MM) {
    const shape = `slope ${slopeDeg}°, height ${heightMm} mm and thickness ${thicknessMm} mm`;
    const why = `with ${shape} the clear opening at the narrow end is ${clear} mm, not above 0`;
    return [{ path: 'piece.size.mm', sentence: `${given} leaves no opening: ${why}. ${remedy}` }];
  }
  if (insert !== undefined) {
    const needed = insert.diameterMm + insert.clearanceMm;
    if (geometry.clearOpeningNarrowMm < needed - NOTHING_MM) {
      const sentence =
        `Insert diameter ${insert.diameterMm} mm with ${insert.clearanceMm} mm clearance needs ${needed} mm, ` +
        `but the clear opening at the narrow end is ${clear} mm. Give up to ${clear} mm together, or a larger size.`;
      return [{ path: 'piece.insert.diameterMm', sentence }];
    }
  }
  return [];
}

function nameProblems(method: Method, index: number, path: string, names: Map<string, number>): Problem[] {
  const name = method.name.trim();
  if (name === '') {
    return [{ path: `${path}.name`, sentence: 'Name of the method is empty. Give each method a name.' }];
  }
  const first = names.get(name);
  if (first === undefined) {
    names.set(name, index);
    return [];
  }
  const sentence =
    `Name of the method "${safeText(name)}" is already that of methods[${first}]. ` +
    'Give each method a name of its own.';
  return [{ path: `${path}.name`, sentence }];
}

function bladeProblems(blade: Blade, path: string): Problem[] {
  const found: Problem[] = [];
  if (blade.plateMm >= blade.kerfMm) {
    found.push({
      path: `${path}.plateMm`,
      sentence:
        `Blade plate ${blade.plateMm} mm is not below the kerf, ${blade.kerfMm} mm. ` +
        `Give the thickness of the plate, above 0 and below ${blade.kerfMm} mm.`,
    });
  }
  const ratio = blade.collarMm / blade.diameterMm;
  if (ratio < 0.1 - 1e-9 || ratio > 0.5 + 1e-9) {
    const low = round(0.1 * blade.diameterMm);
    const high = round(0.5 * blade.diameterMm);
    found.push({
      path: `${path}.collarMm`,
      sentence:
        `Blade collar ${blade.collarMm} mm is not between 0.1 and 0.5 of the blade diameter, ${blade.diameterMm} mm. ` +
        `Give the diameter of the collar, from ${low} to ${high} mm.`,
    });
  }
  return found;
}

function waysProblems(piece: Piece, method: Method, path: string): Problem[] {
  const { sides } = piece;
  const found: Problem[] = [];
  if (method.sequence === 'swapSides' && piece.grain === 'upStave') {
    found.push({
      path: `${path}.sequence`,
      sentence:
        'Cut sequence swapSides needs the grain along the ring, but it runs up the stave: ripped staves are turned ' +
        'over between rips. Give flipFace.',
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
      sentence: `Assembly twoHalves needs an even number of sides, but there are ${sides}. Give allAtOnce or oneByOne.`,
    });
  }
  if (method.test.kind === 'halfRing' || method.test.kind === 'twoHalvesTogether') {
    found.push({
      path: `${path}.test.kind`,
      sentence:
        `Test piece ${method.test.kind} needs an even number of sides, but there are ${sides}. ` +
        'Give none, fullRing or pair.',
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
function stripProblems(project: Project, geometry: RingGeometry): Problem[] {
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
  const pitch = pitchMm(geometry, neediest.blade, neediest.sequence).toFixed(1);
  const needed = (Math.ceil(neededMm * 10 - NOTHING_MM) / 10).toFixed(1);
  const sentence =
    `Strip length ${length} mm is too short: method "${safeText(neediest.name)}" needs ${needed} mm, ` +
    `for trim ${stock.trimMm} mm, ${staves} staves of ${pitch} mm and ${stock.holdMm} mm to hold. ` +
    'Give longer strips, or more of them.';
  return [{ path: 'stock.stripLengthMm', sentence }];
}
