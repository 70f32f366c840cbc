import type { Generator } from './xoshiro';
import { height, LAYERS, step, sure, TAIL_START } from './ziggurat';

/**
 * Fills `out[from]` to `out[to − 1]` with independent standard normal numbers of 52-bit resolution; the tails are exact
 * and not cut off. In 98.8 % of cases a number takes two random words; the sign comes out of the table, because a branch
 * on a random sign would cost as much as all the rest. Filling in pieces gives the same numbers as filling at once.
 *
 * Source: Marsaglia and Tsang (2000); layer and candidate come from separate bits, as Doornik (2005) asks.
 */
export function fillNormals(generator: Generator, out: Float64Array, from = 0, to = out.length): void {
  const state = generator.state;
  let i = from;
  while (i < to) {
    let s0 = state[0]!;
    let s1 = state[1]!;
    let s2 = state[2]!;
    let s3 = state[3]!;
    let cell = 0;
    let candidate = 0;
    // The rare candidate that needs a closer look leaves this loop, so that the state can stay in registers inside it.
    // Each half of the body is `nextUint32`, written out.
    for (; i < to; i++) {
      const firstProduct = Math.imul(s1, 5);
      const first = Math.imul((firstProduct << 7) | (firstProduct >>> 25), 9);
      const firstShifted = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= firstShifted;
      s3 = (s3 << 11) | (s3 >>> 21);

      const secondProduct = Math.imul(s1, 5);
      const second = Math.imul((secondProduct << 7) | (secondProduct >>> 25), 9);
      const secondShifted = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= secondShifted;
      s3 = (s3 << 11) | (s3 >>> 21);

      cell = first & 511;
      candidate = (first >>> 12) * 4_294_967_296 + (second >>> 0);
      if (candidate >= sure[cell]!) break;
      out[i] = candidate * step[cell]!;
    }
    state[0] = s0;
    state[1] = s1;
    state[2] = s2;
    state[3] = s3;
    if (i < to) out[i++] = settleCandidate(generator, cell, candidate);
  }
}

/** Fills `out[from]` to `out[to − 1]` with independent numbers strictly between 0 and 1. */
export function fillUniforms(generator: Generator, out: Float64Array, from = 0, to = out.length): void {
  for (let i = from; i < to; i++) out[i] = generator.uniform();
}

/** Decides a candidate at a layer's rim or in the tail, drawing new candidates until one is kept. */
function settleCandidate(generator: Generator, cell: number, candidate: number): number {
  while (true) {
    const value = candidate * step[cell]!;
    if (candidate < sure[cell]!) return value;
    const layer = cell % LAYERS;
    if (layer === 0) return cell === 0 ? drawTail(generator) : -drawTail(generator);
    const low = height[layer]!;
    if (low + generator.uniform() * (height[layer + 1]! - low) < Math.exp(-0.5 * value * value)) return value;
    const word = generator.nextUint32();
    cell = word & 511;
    candidate = (word >>> 12) * 4_294_967_296 + generator.nextUint32();
  }
}

/** A normal number known to lie beyond the base layer. Source: G. Marsaglia, Technometrics 6 (1964) 101–102. */
function drawTail(generator: Generator): number {
  while (true) {
    const beyond = -Math.log(generator.uniform()) / TAIL_START;
    if (-2 * Math.log(generator.uniform()) > beyond * beyond) return TAIL_START + beyond;
  }
}
