import { currentSchemaVersion } from '../../../core/job/index.ts';
import type { LengthUnits } from '../../ui/fields/units.ts';
import { starterInks } from '../../../core/asks/index.ts';
import { told, words } from '../../store/words.ts';

export interface NewJobWishes {
  readonly title: string;
  readonly units: LengthUnits;
  readonly imageMm: readonly [number, number];
  readonly sheetMm: readonly [number, number];
  /** With the starter shelf: published values, nobody's own. */
  readonly starter?: boolean;
}

/** The document of a job with nothing on it yet: an image, and one paper that is not measured. Whoever opens it fills in the rest. */
export function newJobText({ title, units, imageMm, sheetMm, starter = false }: NewJobWishes): string {
  const w = words().forms;
  return JSON.stringify({
    schemaVersion: currentSchemaVersion,
    print: crypto.randomUUID(),
    title,
    units,
    image: { widthMm: imageMm[0], heightMm: imageMm[1] },
    ...(starter ? { inks: starterInks(told) } : {}),
    // L* 95 with a touch of yellow is a usual uncoated white (common practice); the wide sigma says that nobody measured it.
    papers: [
      {
        id: 'paper',
        name: w.paperName,
        reading: { kind: 'lab', lab: [95, 0, 2], sigma: 3 },
        widthMm: sheetMm[0],
        heightMm: sheetMm[1],
        count: 20,
      },
    ],
  });
}
