import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { log } from './numeric/index.ts';

/** Seeded random numbers: the same seed gives the same numbers in the browser and in Node. */
export interface Random {
  /** Uniform in [0, 1), 32 bits. */
  next(): number;
  /** Standard normal (Box–Muller). */
  normal(): number;
  /** Whole number in 0..n−1. */
  below(n: number): number;
}

/**
 * The generator's first draws show what it was started with: 0, 1, 2 … begin alike, with a normal of 6.7. So those bits are
 * mixed (MurmurHash3's last step, in the public domain) and the first draws left out.
 */
const warmUp = 16;

function mixed(seed: number): number {
  let bits = seed | 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return bits ^ (bits >>> 16);
}

export function seeded(seed: number): Random {
  const generator = xoroshiro128plus(mixed(seed));
  for (let i = 0; i < warmUp; i++) generator.next();
  let spare: number | undefined;
  const next = (): number => (generator.next() >>> 0) / 4294967296;
  return {
    next,
    normal() {
      if (spare !== undefined) {
        const value = spare;
        spare = undefined;
        return value;
      }
      const radius = Math.sqrt(-2 * log(1 - next()));
      const angle = 2 * Math.PI * next();
      spare = settled(radius * Math.sin(angle));
      return settled(radius * Math.cos(angle));
    },
    below: (n) => Math.floor(next() * n),
  };
}

/** Engines differ in the last bits of log, sin and cos; twelve digits are the same everywhere. */
function settled(value: number): number {
  return Math.round(value * 1e12) / 1e12;
}
