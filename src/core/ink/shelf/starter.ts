import type { Lab } from '../../colour/index.ts';
import { say, type Saying } from '../../../words/say.ts';
import { emptyShelf } from './shelf.ts';
import type { InkShelf, ShelfInk } from './schema.ts';

/**
 * Inks to begin with, before anything is drawn down: colours as published, nobody's own. The middle between FOGRA39L (aims of ISO 12647-2
 * on coated paper) and FOGRA29L (measured, uncoated), characterisation data with white backing, D50, 2°, as the Debian package
 * icc-profiles-free carries them (zlib licence): solids of the process inks; hues are the patches named, each taken as one ink of that
 * colour. Cyan, magenta, yellow, black in percent.
 */
const published = [
  { id: 'cyan', says: say('starter.cyan'), patch: [100, 0, 0, 0], lab: [57, -31.8, -46.4] },
  { id: 'magenta', says: say('starter.magenta'), patch: [0, 100, 0, 0], lab: [51.5, 66.7, -3.5] },
  { id: 'yellow', says: say('starter.yellow'), patch: [0, 0, 100, 0], lab: [88.9, -3.3, 86.1] },
  { id: 'black', says: say('starter.black'), patch: [0, 0, 0, 100], lab: [23.9, 1, 1] },
  { id: 'orange', says: say('starter.orange'), patch: [0, 55, 100, 0], lab: [64.4, 34.3, 55.4] },
  { id: 'red', says: say('starter.red'), patch: [0, 100, 100, 0], lab: [49.7, 61.7, 39.1] },
  { id: 'violet', says: say('starter.violet'), patch: [70, 100, 0, 0], lab: [36.2, 29.7, -30.6] },
  { id: 'blue', says: say('starter.blue'), patch: [100, 70, 0, 0], lab: [38.2, 1.2, -41.3] },
  { id: 'green', says: say('starter.green'), patch: [100, 0, 100, 0], lab: [51.1, -53.9, 22.7] },
  { id: 'brown', says: say('starter.brown'), patch: [40, 70, 100, 0], lab: [48.1, 21.6, 29.8] },
  { id: 'grey', says: say('starter.grey'), patch: [0, 0, 0, 50], lab: [61.7, 0.4, -0.8] },
] as const satisfies readonly { id: string; says: Saying; patch: readonly number[]; lab: Lab }[];

export type StarterId = (typeof published)[number]['id'];

/** Paper of the same data. */
const paper: Lab = [95.4, 0.3, -2.2];

/**
 * Doubt, ΔE00: two thirds of the same patches of seven other sets of such data lie within it, and overlaps foreseen from them within
 * their bands (test/outside/starter.test.ts). A pot of one's own may be further off: what makers call by one name differs.
 */
export const starterSigma = 8;

/** The starter shelf, its inks named by `tell`. Marked as published: whoever takes one is told that it is not theirs. */
export function starterShelf(tell: (saying: Saying) => string): InkShelf {
  return {
    ...emptyShelf(),
    inks: [
      ...published.map(
        ({ id, says, patch, lab }): ShelfInk => ({
          id,
          name: tell(says),
          role: 'ink',
          densityGPerMl: 1.1,
          note: tell(say('starter.source', { patch: say('starter.patch', { c: patch[0], m: patch[1], y: patch[2], k: patch[3] }) })),
          lots: [
            {
              lot: tell(say('starter.lot')),
              known: 'published',
              source: {
                from: 'one-ground',
                ground: { kind: 'lab', lab: [...paper], sigma: 1 },
                over: { kind: 'lab', lab: [...lab], sigma: starterSigma },
              },
            },
          ],
        }),
      ),
      {
        id: 'clear-base',
        name: tell(say('starter.base')),
        role: 'transparent-base',
        densityGPerMl: 1.05,
        lots: [{ lot: tell(say('starter.lot')), known: 'published', source: { from: 'clear' } }],
      },
    ],
  };
}

/** The patch of the published data that a starter ink was taken from. */
export function starterPatches(): readonly { readonly id: StarterId; readonly patch: readonly number[]; readonly lab: Lab }[] {
  return published;
}
