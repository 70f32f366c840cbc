/**
 * Drawing the row offsets of the joints: the bow that a wandering blade leaves in the middle row, and snags. Three rows
 * of N joints a ring (bottom, middle, top), mm, positive = hollow.
 */
import type { DrawList } from '../errors/draw-list';
import { below, exponential, skip } from '../random/draws';
import { fillNormals } from '../random/normal';
import { stream } from '../random/streams';
import type { Engine } from './stages';

export interface RowPour {
  /** 3N numbers a ring after `pour`. */
  rows: Float64Array;
  /** Cuts seen to be spoilt and made again, by ring, after `pour`. */
  recuts: Uint8Array;
  pour(count: number): void;
}

export function openRows(
  list: DrawList,
  engine: Engine,
  seed: number,
  block: number,
  label: string,
  most: number,
): RowPour {
  const { sides, cutRows, bulgeMm, snag } = list;
  const perRing = 3 * sides;
  const rows = new Float64Array(most * perRing);
  const recuts = new Uint8Array(most);
  const cuts = cutRows.length;
  const bulges = stream(seed, `${label} bulge`, block);
  const snags = snag.chance > 0 ? stream(seed, `${label} snags`, block) : undefined;
  let untilNext = snags ? skip(snags, snag.chance) : Number.POSITIVE_INFINITY;
  let dirty = false;

  // Variance of each joint's middle row; the two faces of one kerf cancel, all others are independent.
  const weight = new Float64Array(cuts * sides);
  cutRows.forEach(({ rows: [, middle] }, cut) => {
    middle.index.forEach((at, k) => {
      weight[cut * sides + (at - sides)]! += middle.weight[k]!;
    });
  });
  const sd = Float64Array.from({ length: sides }, (_, joint) => {
    let variance = 0;
    for (let cut = 0; cut < cuts; cut++) variance += (weight[cut * sides + joint]! * bulgeMm) ** 2;
    return Math.sqrt(variance);
  });
  const bowed = Int32Array.from({ length: sides }, (_, j) => j).filter((j) => sd[j]! > 0);
  const bowedSd = Float64Array.from(bowed, (joint) => sd[joint]!);
  const perRingNormals = engine === 'collapsed' ? bowed.length : bulgeMm > 0 ? cuts : 0;
  const z = new Float64Array(most * perRingNormals);

  // The middle rows of all cuts in a row: which normal, onto which row offset, with which sign and size.
  const marks = cutRows.flatMap(({ rows: [, middle] }, cut) =>
    middle.index.map((at, k) => ({ cut, at, size: middle.weight[k]! * bulgeMm })),
  );
  const markCut = Int32Array.from(marks, (mark) => mark.cut);
  const markAt = Int32Array.from(marks, (mark) => mark.at);
  const markSize = Float64Array.from(marks, (mark) => mark.size);

  function pourBows(count: number): void {
    fillNormals(bulges, z, 0, count * perRingNormals);
    if (engine === 'collapsed') {
      for (let ring = 0, k = 0; ring < count; ring++) {
        const middle = ring * perRing + sides;
        for (let b = 0; b < bowed.length; b++, k++) rows[middle + bowed[b]!] = bowedSd[b]! * z[k]!;
      }
      return;
    }
    for (let ring = 0; ring < count; ring++) {
      const at = ring * perRing;
      const from = ring * cuts;
      for (let m = 0; m < markAt.length; m++) rows[at + markAt[m]!]! += markSize[m]! * z[from + markCut[m]!]!;
    }
  }

  function pourSnags(count: number): void {
    const chances = count * cuts;
    while (untilNext < chances) {
      const ring = Math.floor(untilNext / cuts);
      const cut = untilNext % cuts;
      const depth = exponential(snags!, snag.meanMm);
      const row = below(snags!, 3);
      if (depth > snag.recutAboveMm) recuts[ring]!++;
      else {
        const { index, weight: signs } = cutRows[cut]!.rows[row]!;
        for (let i = 0; i < index.length; i++) rows[ring * perRing + index[i]!]! += signs[i]! * depth;
        dirty = true;
      }
      untilNext += 1 + skip(snags!, snag.chance);
    }
    untilNext -= chances;
  }

  return {
    rows,
    recuts,
    pour(count) {
      if (dirty || engine === 'plain') rows.fill(0);
      dirty = false;
      recuts.fill(0);
      if (perRingNormals > 0) pourBows(count);
      if (snags) pourSnags(count);
    },
  };
}
