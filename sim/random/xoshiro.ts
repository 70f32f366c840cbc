/** The one random generator of the engine: fast, small, and the same bits on every machine. */

const WORD_MASK = 0xffff_ffff_ffff_ffffn;

/**
 * Gives a function that yields splitmix64's 64-bit outputs, one a call, starting from `seed` (taken modulo 2⁶⁴).
 * It only turns seeds into starting states, so plain big integers are fast enough.
 *
 * Source: S. Vigna, splitmix64.c (public domain, 2015).
 */
export function splitmix64(seed: bigint): () => bigint {
  let state = seed & WORD_MASK;
  return () => {
    state = (state + 0x9e37_79b9_7f4a_7c15n) & WORD_MASK;
    let mixed = state;
    mixed = ((mixed ^ (mixed >> 30n)) * 0xbf58_476d_1ce4_e5b9n) & WORD_MASK;
    mixed = ((mixed ^ (mixed >> 27n)) * 0x94d0_49bb_1331_11ebn) & WORD_MASK;
    return mixed ^ (mixed >> 31n);
  };
}

/**
 * xoshiro128** 1.1. The four state words are open so that a batch can carry them in local variables, which is twice as
 * fast as writing them back after every number; whoever does so must put them back.
 *
 * Source: D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw. 47
 * (2021) 36; xoshiro128starstar.c, version 1.1.
 */
export class Generator {
  readonly state: Int32Array;

  /**
   * @param words four 32-bit words, signed or not
   * @throws RangeError unless there are four words and one of them is not 0: from all zeros the generator never moves
   */
  constructor(words: readonly number[]) {
    if (words.length !== 4 || words.every((word) => (word | 0) === 0)) {
      throw new RangeError(`Generator state ${words.join(', ')} cannot be used. Give four words, not all of them 0.`);
    }
    this.state = Int32Array.from(words, (word) => word | 0);
  }

  /** A whole number from 0 to 2³² − 1. */
  nextUint32(): number {
    const state = this.state;
    const s1 = state[1]!;
    const mixed2 = state[2]! ^ state[0]!;
    const mixed3 = state[3]! ^ s1;
    const product = Math.imul(s1, 5);
    state[1] = s1 ^ mixed2;
    state[0]! ^= mixed3;
    state[2] = mixed2 ^ (s1 << 9);
    state[3] = (mixed3 << 11) | (mixed3 >>> 21);
    return Math.imul((product << 7) | (product >>> 25), 9) >>> 0;
  }

  /**
   * A number strictly between 0 and 1: the middle of one of 2⁵² equal cells, so it is exact in a double, symmetric
   * about ½, and its logarithm is always finite and below 0.
   */
  uniform(): number {
    const high = this.nextUint32() >>> 6;
    const low = this.nextUint32() >>> 6;
    return (high * 0x400_0000 + low + 0.5) * 2 ** -52;
  }
}

/** A generator whose state is two outputs of splitmix64, low halves first. Never the all-zero state. */
export function seededGenerator(seed: bigint): Generator {
  const next = splitmix64(seed);
  // splitmix64 is one-to-one in its counter, so of two successive outputs at most one is 0.
  const words = [next(), next()].flatMap((output) => [output & 0xffff_ffffn, output >> 32n]);
  return new Generator(words.map(Number));
}
