/**
 * Drawing the outputs of a run, in two ways that give exactly the same distribution.
 *
 * **Collapsed**: openings depend on the cutting errors only through a few linear outputs, and every normal source enters
 * them linearly; so one normal of that many dimensions, with the summed mean and covariance, stands for hundreds of
 * errors, and only what is not normal is drawn by itself. **Plain**: every source is drawn, cut by cut.
 */
import type { Draw, DrawList, Effects, Offset, RareDraw, Stage as StageName } from '../errors/draw-list';
import { exponential, skip } from '../random/draws';
import { fillNormals, fillUniforms } from '../random/normal';
import { stream } from '../random/streams';
import type { Generator } from '../random/xoshiro';
import { covarianceFactor } from './covariance-factor';
import { type OutputMatrix, outputsOf } from './output-matrix';

export type Engine = 'collapsed' | 'plain';

/** Adds the draws of `count` rings to `out` (count × width, ring by ring). Successive calls go on in the same streams. */
export type Pour = (out: Float64Array, count: number) => void;

export interface Stage {
  /** The streams of one block; `label` keeps a test piece's draws apart from the piece's. */
  open(seed: number, block: number, label: string): Pour;
}

interface Column {
  values: Float64Array;
}

function parts(list: DrawList, stages: readonly StageName[]): { draws: Draw[]; offsets: Offset[]; rare: RareDraw[] } {
  const within = (entry: { stage: StageName }) => stages.includes(entry.stage);
  return {
    draws: list.draws.filter(within),
    offsets: list.offsets.filter(within),
    rare: stages.includes('perCut') ? list.rare : [],
  };
}

function meanOutputs(matrix: OutputMatrix, offsets: readonly Effects[]): Float64Array {
  const mean = new Float64Array(matrix.width);
  const column = new Float64Array(matrix.width);
  for (const offset of offsets) {
    outputsOf(matrix, offset, column);
    for (let o = 0; o < mean.length; o++) mean[o]! += column[o]!;
  }
  return mean;
}

/** Uniform settings and chips: drawn by themselves in either engine, from the same streams. */
function openUncommon(
  matrix: OutputMatrix,
  uniform: readonly Draw[],
  rare: readonly RareDraw[],
  open: (name: string) => Generator,
): Pour {
  const { width } = matrix;
  const columns: Column[] = uniform.map((draw) => ({ values: outputsOf(matrix, draw) }));
  const rareColumns: Column[] = rare.map((draw) => ({ values: outputsOf(matrix, draw) }));
  const uniforms = columns.length > 0 ? open('uniform') : undefined;
  const chance = rare[0]?.chance ?? 0;
  const chips = chance > 0 ? open('chips') : undefined;
  let untilNext = chips ? skip(chips, chance) : Number.POSITIVE_INFINITY;
  let unit = new Float64Array(0);
  return (out, count) => {
    if (uniforms) {
      const needed = count * columns.length;
      if (unit.length < needed) unit = new Float64Array(needed);
      fillUniforms(uniforms, unit, 0, needed);
      for (let ring = 0, u = 0; ring < count; ring++) {
        for (const { values } of columns) {
          const x = 2 * unit[u++]! - 1;
          for (let o = 0; o < width; o++) out[ring * width + o]! += x * values[o]!;
        }
      }
    }
    if (chips) {
      const chances = count * rare.length;
      while (untilNext < chances) {
        const ring = Math.floor(untilNext / rare.length);
        const which = untilNext % rare.length;
        const size = exponential(chips, rare[which]!.mean);
        for (let o = 0; o < width; o++) out[ring * width + o]! += size * rareColumns[which]!.values[o]!;
        untilNext += 1 + skip(chips, chance);
      }
      untilNext -= chances;
    }
  };
}

export function collapsedStage(list: DrawList, matrix: OutputMatrix, stages: readonly StageName[]): Stage {
  const { width, halvesAt } = matrix;
  const { draws, offsets, rare } = parts(list, stages);
  const mean = meanOutputs(matrix, offsets);
  // The part on and below the diagonal says it all.
  const covariance = new Float64Array(width * width);
  const column = new Float64Array(width);
  for (const draw of draws) {
    if (draw.shape !== 'normal') continue;
    outputsOf(matrix, draw, column);
    for (let i = 0; i < width; i++) {
      for (let j = 0; j <= i; j++) covariance[i * width + j]! += column[i]! * column[j]!;
    }
  }
  const factor = covarianceFactor(covariance, width);
  const uniform = draws.filter((draw) => draw.shape === 'uniform');
  return {
    open(seed, block, label) {
      const open = (name: string) => stream(seed, `${label} ${name}`, block);
      const uncommon = openUncommon(matrix, uniform, rare, open);
      // Every output keeps a stream of its own, so that one that loses its rank, or sizes asked for, leave the others alone.
      const normals = Array.from({ length: width }, (_, k) =>
        open(k < halvesAt ? `misclosure ${k}` : `size ${k - halvesAt}`),
      );
      let z = new Float64Array(0);
      let output = new Float64Array(0);
      return (out, count) => {
        if (z.length < count * width) z = new Float64Array(count * width);
        if (output.length < count) output = new Float64Array(count);
        // One run of normals a column; a column that lost its rank takes none.
        for (let k = 0; k < width; k++) {
          if (factor[k * width + k] === 0) continue;
          fillNormals(normals[k]!, z, k * count, (k + 1) * count);
        }
        for (let o = 0; o < width; o++) {
          output.fill(mean[o]!, 0, count);
          for (let k = 0; k <= o; k++) {
            const weight = factor[o * width + k]!;
            if (weight !== 0) addScaled(output, 0, z, k * count, weight, count);
          }
          addColumn(out, o, width, output, count);
        }
        uncommon(out, count);
      };
    },
  };
}

export function plainStage(list: DrawList, matrix: OutputMatrix, stages: readonly StageName[]): Stage {
  const { width, values } = matrix;
  const errors = values.length / width;
  const { draws, offsets, rare } = parts(list, stages);
  const mean = meanOutputs(matrix, offsets);
  const normal = draws.filter((draw) => draw.shape === 'normal');
  const uniform = draws.filter((draw) => draw.shape === 'uniform');
  const sources = [...new Set(normal.map((draw) => draw.source))];
  return {
    open(seed, block, label) {
      const open = (name: string) => stream(seed, `${label} ${name}`, block);
      const uncommon = openUncommon(matrix, uniform, rare, open);
      const generators = new Map(sources.map((source) => [source, open(source)]));
      let z = new Float64Array(0);
      let output = new Float64Array(0);
      let faceErrors = new Float64Array(0);
      return (out, count) => {
        if (z.length < count) z = new Float64Array(count);
        if (output.length < count) output = new Float64Array(count);
        if (faceErrors.length < errors * count) faceErrors = new Float64Array(errors * count);
        faceErrors.fill(0, 0, errors * count);
        for (const { source, index, weight } of normal) {
          fillNormals(generators.get(source)!, z, 0, count);
          for (let k = 0; k < index.length; k++) addScaled(faceErrors, index[k]! * count, z, 0, weight[k]!, count);
        }
        for (let o = 0; o < width; o++) {
          output.fill(mean[o]!, 0, count);
          for (let error = 0; error < errors; error++) {
            const weight = values[error * width + o]!;
            if (weight !== 0) addScaled(output, 0, faceErrors, error * count, weight, count);
          }
          addColumn(out, o, width, output, count);
        }
        uncommon(out, count);
      };
    },
  };
}

function addScaled(
  to: Float64Array,
  toAt: number,
  from: Float64Array,
  fromAt: number,
  weight: number,
  count: number,
): void {
  for (let ring = 0; ring < count; ring++) to[toAt + ring]! += weight * from[fromAt + ring]!;
}

/** Adds one output of every ring into the ring-by-ring layout. */
function addColumn(out: Float64Array, o: number, width: number, column: Float64Array, count: number): void {
  for (let ring = 0, at = o; ring < count; ring++, at += width) out[at]! += column[ring]!;
}
