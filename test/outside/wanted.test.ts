import { describe, expect, test } from 'vitest';
import { deltaE00, type Lab } from '../../src/core/colour/index.ts';
import { askWanted } from '../../src/core/asks/index.ts';
import { parseJob, type Job } from '../../src/core/job/index.ts';
import { seeded } from '../../src/core/random.ts';
import { createPlanner } from '../../src/core/plan/index.ts';
import { jobOf, offset, overlapsOf, patchOf, type Patches, type Trial } from './overprint-jobs.ts';

/** A job of a measured set that wants of every overlap what was measured of it. */
function wishing(patches: Patches, trial: Trial): Job {
  const wanted = overlapsOf(patches)
    .filter((name) => trial.black === true || !name.includes('K'))
    .map((name) => ({ layers: [...name].map((l) => l.toLowerCase()), lab: [...patchOf(patches, name).lab] }));
  return parseJob({ ...jobOf(patches, trial), wanted });
}

const asked = (job: Job, within?: number): ReturnType<typeof askWanted> =>
  askWanted(createPlanner().plan({ job, attachments: new Map() }), undefined, within);

describe('colours wanted of overlaps', () => {
  test.each([
    ['Lab alone', {}],
    ['with a measured overlap', { taught: ['CMY'] }],
    ['wet on wet', { films: 'wet-on-wet' }],
  ] as const)('are told with the colour and the band that the Plan shows: %s', (_, trial) => {
    const job = wishing(offset.FOGRA28L, trial);
    const [paper] = createPlanner().plan({ job, attachments: new Map() }).papers;
    for (const { at, now } of asked(job)) {
      const shown = paper.overlaps.find((o) => [...o.layers].sort().join() === [...job.wanted[at].layers].sort().join())!;
      expect(now!.lab).toEqual(shown.lab);
      expect(now!.band).toBe(shown.band);
      expect(now!.deltaE).toBeCloseTo(deltaE00(shown.lab, job.wanted[at].lab as unknown as Lab), 9);
    }
  });
  test('chances are as good as they say, on nine measured sets: met as often as foretold, within a tenth', () => {
    const random = seeded(15);
    let foretold = 0,
      met = 0,
      n = 0;
    for (const patches of Object.values(offset)) {
      const base = wishing(patches, { films: 'wet-on-wet', black: true });
      // Colours somewhere around the ones foreseen, as one wishes for them.
      const foreseen = asked(base);
      const wanted = base.wanted.flatMap((one, i) =>
        [3, 6, 9].map((far) => ({
          layers: one.layers,
          lab: foreseen[i].now!.lab.map((v) => v + (far / 1.7) * random.normal()) as unknown as [number, number, number],
        })),
      );
      for (const { at, now } of asked({ ...base, wanted }, 5)) {
        const name = wanted[at].layers.map((l) => l.toUpperCase()).join('');
        n++;
        foretold += now!.chance;
        if (deltaE00(patchOf(patches, name).lab, wanted[at].lab) <= 5) met++;
      }
    }
    console.log(`wanted within 5: foretold ${((100 * foretold) / n).toFixed(0)} %, met ${((100 * met) / n).toFixed(0)} % of ${n}`);
    expect(n).toBeGreaterThan(250);
    expect(Math.abs(foretold - met) / n).toBeLessThan(0.1);
  });
  test('what was measured is met for certain or not at all', () => {
    const job = wishing(offset.FOGRA39L, { taught: ['CMY'] });
    const taught = asked(job).find(({ at }) => job.wanted[at].layers.length === 3)!;
    expect(taught.now!.deltaE).toBeLessThan(0.1);
    expect(taught.now!.chance).toBeGreaterThan(0.95);
  });
});
