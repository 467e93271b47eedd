import type { InkShelf } from '../../ink/index.ts';
import type { Job, JobInk } from '../../job/index.ts';
import { inkFromShelf, lotOf } from './shelf.ts';

/** A jar of the studio's shelf with something left in it, as an ink of the job. */
export interface ShelfJar {
  /** As the job takes it: under an id of its own where it is not there yet. */
  readonly ink: JobInk;
  readonly lot: string;
  readonly leftGrams: number;
  /** The job has this very lot already. */
  readonly here: boolean;
}

/** Every lot of the shelf of which something is left. What the job itself says of the same lot goes before. */
export function jarsOfShelf(shelf: InkShelf, job: Pick<Job, 'inks'>): ShelfJar[] {
  const taken = new Set(job.inks.map((k) => k.id));
  return shelf.inks
    .filter((ink) => ink.role === 'ink')
    .flatMap((ink) =>
      ink.lots.flatMap((lot): ShelfJar[] => {
        const leftGrams = lot.gramsLeft ?? 0;
        if (leftGrams <= 0) return [];
        const own = inkFromShelf(ink, lot.lot);
        const known = job.inks.find((k) => k.role === 'ink' && sourceOf(k) === sourceOf(own));
        if (known) return (known.leftGrams ?? 0) > 0 ? [] : [{ ink: known, lot: lot.lot, leftGrams, here: true }];
        let id = own.id;
        for (let n = 2; taken.has(id); n++) id = `${own.id.slice(0, 58)}-${n}`;
        taken.add(id);
        const name = id === own.id ? own.name : `${own.name}, ${lot.lot}`;
        return [{ ink: { ...own, id, name: name.slice(0, 200) }, lot: lot.lot, leftGrams, here: false }];
      }),
    );
}

/** What was read of an ink; two inks that say the same are one. */
const sourceOf = (ink: JobInk): string => JSON.stringify(lotOf(ink, '')?.source ?? ink.id);
