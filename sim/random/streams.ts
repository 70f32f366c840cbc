import { type Generator, seededGenerator, splitmix64 } from './xoshiro';

const FNV_OFFSET = 0xcbf2_9ce4_8422_2325n;
const FNV_PRIME = 0x0000_0100_0000_01b3n;

/**
 * The stream of random numbers that belongs to one source in one block of trials: the same triple gives the same bits
 * whatever was drawn elsewhere, in whatever order and by however many workers; any other triple gives an unrelated
 * stream.
 *
 * @param seed whole number 0 to 2³² − 1; 0 is a seed like any other
 * @param name what the numbers are for, such as the name of an error source
 * @param block index of the block of trials, a whole number from 0 up
 * @throws RangeError for a seed or a block outside its range
 *
 * Source: the name is hashed by FNV-1a (64 bits, over UTF-16 code units); the parts are chained through splitmix64.
 */
export function stream(seed: number, name: string, block: number): Generator {
  if (!Number.isInteger(seed) || seed < 0 || seed > 0xffff_ffff) {
    throw new RangeError(`Seed ${seed} is not a whole number from 0 to 4294967295. Give such a number.`);
  }
  if (!Number.isSafeInteger(block) || block < 0) {
    throw new RangeError(`Block ${block} of stream "${name}" is not a whole number from 0 up. Give such a number.`);
  }
  let key = splitmix64(BigInt(seed))();
  key = splitmix64(key ^ hashOf(name))();
  key = splitmix64(key ^ BigInt(block))();
  return seededGenerator(key);
}

/** Names are few and streams are many: every block of trials opens the same ones. */
const hashes = new Map<string, bigint>();

function hashOf(name: string): bigint {
  const known = hashes.get(name);
  if (known !== undefined) return known;
  let hash = FNV_OFFSET;
  for (let i = 0; i < name.length; i++) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(name.charCodeAt(i))) * FNV_PRIME);
  }
  hashes.set(name, hash);
  return hash;
}
