import { existsSync, readdirSync } from 'node:fs';
import { seeded } from '../../src/core/random.ts';

const clipArt = '/usr/share/openclipart/svg/';
const icons = ['node_modules/bootstrap-icons/icons/', 'node_modules/lucide-static/icons/'];

export interface Drawing {
  readonly name: string;
  readonly path: string;
}

export interface Choice {
  /** In place of the known ones. */
  readonly folder?: string;
  /** Each so-manieth, from this one on. */
  readonly every: number;
  readonly from: number;
  /** In an order of chance, so many of them. */
  readonly seed?: number;
  readonly count: number;
}

/** Which drawings are judged, always in the same order. */
export function chosen({ folder, every, from, seed, count }: Choice): Drawing[] {
  if (!folder && !existsSync(clipArt)) console.error('Without clip art: apt-get install openclipart-svg, or name its folder.');
  const folders = folder ? [`${folder}/`] : [...icons, clipArt].filter((one) => existsSync(one));
  const all = folders
    .flatMap((one) =>
      readdirSync(one, { recursive: true, encoding: 'utf8' })
        .sort()
        .map((name) => ({ name, path: one + name })),
    )
    .filter(({ name }) => name.endsWith('.svg'));
  const picked = all.filter((_, i) => i % every === from % every);
  return (seed === undefined ? picked : shuffled(picked, seed)).slice(0, count);
}

function shuffled<T>(list: readonly T[], seed: number): T[] {
  const random = seeded(seed);
  const out = [...list];
  for (let i = out.length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    [out[i], out[j]] = [out[j], out[i]];
  }
  return out;
}
