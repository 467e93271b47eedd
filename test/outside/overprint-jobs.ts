import { readFileSync } from 'node:fs';
import { deltaE00, type Lab } from '../../src/core/colour/index.ts';
import { parseJob, type Job, type JobReading } from '../../src/core/job/index.ts';
import { createPlanner, type PlannedPaper } from '../../src/core/plan/index.ts';
import { seeded } from '../../src/core/random.ts';

/**
 * Measured solids and overprints as a printmaker's jobs: single inks are typed in as read, each overlap covers a square of its own,
 * and `plan()` foresees it with what ships. Sources stand in the data files.
 */
export interface Patch {
  readonly lab: Lab;
  readonly xyz: readonly number[];
  readonly reflectance?: readonly number[];
}
export type Patches = Readonly<Record<string, Patch>>;

const read = <T>(name: string): T => JSON.parse(readFileSync(new URL(`data/${name}.json`, import.meta.url), 'utf8')) as T;

const { LAMINATED_PROOF, ...tuned } = Object.fromEntries(
  Object.entries(read<{ conditions: Record<string, { patches: Patches }> }>('overprints').conditions).map(([k, v]) => [k, v.patches]),
);
/** Offset prints: FOGRA28L, 29L, 39L, TR003 and FOGRA30L, 40L, TR002, TR005, TR006. */
export const offset: Readonly<Record<string, Patches>> = {
  ...tuned,
  ...read<{ conditions: Record<string, Patches> }>('overprints-held').conditions,
};
/** Films laminated one after the other: the only measured set of films that lie dry on one another, with spectra. */
export const proof: Patches = LAMINATED_PROOF;

/** Offset prints black first (common practice: K C M Y). */
export const pressOrder = (name: string): string[] => [...name].sort((a, b) => 'KCMY'.indexOf(a) - 'KCMY'.indexOf(b));
export const overlapsOf = (patches: Patches): string[] =>
  Object.keys(patches)
    .filter((name) => name.length > 1)
    .map((name) => pressOrder(name).join(''));
export const patchOf = (patches: Patches, name: string): Patch =>
  patches[Object.keys(patches).find((other) => pressOrder(other).join('') === pressOrder(name).join(''))!];

export type Known = 'lab' | 'spectrum' | 'two-grounds' | 'photo';

export interface Trial {
  readonly known?: Known;
  readonly films?: Job['press']['films'];
  /** Black is one of the inks. */
  readonly black?: boolean;
  /** Overlaps that were read too. */
  readonly taught?: readonly string[];
  /** Of the photograph's errors. */
  readonly seed?: number;
}

/** Doubt of a photographed colour: the middle of what OPTICS section 5 gives. */
const photoSigma = 4;
const cell = 8;

/** The job of a set, with every combination of its inks printed somewhere. */
export function jobOf(patches: Patches, trial: Trial = {}): Job {
  const inks = ['K', 'C', 'M', 'Y'].filter((l) => patches[l] && (trial.black === true || l !== 'K'));
  const random = seeded(trial.seed ?? 1);
  const off = (): number => (photoSigma / 1.87) * random.normal();
  const reading = (name: string): JobReading => {
    const patch = patchOf(patches, name);
    if (trial.known === 'spectrum') return { kind: 'spectrum', values: [...patch.reflectance!] };
    if (trial.known !== 'photo' || name === 'W') return { kind: 'lab', lab: [...patch.lab] };
    return { kind: 'photo', lab: [...photographed(patch.lab, [off(), off(), off()])], sigma: photoSigma };
  };
  const twoGrounds = (l: string): boolean => trial.known === 'two-grounds' && l !== 'K';
  const cells = Array.from({ length: 1 << inks.length }, (_, code) => code);
  const across = 1 << Math.ceil(inks.length / 2);
  return parseJob({
    schemaVersion: 1,
    title: 'Overprints',
    image: { widthMm: across * cell, heightMm: (cells.length / across) * cell },
    press: { films: trial.films ?? 'dried-between' },
    // No stencil held these films up along their edges: a sheet without thickness.
    materials: [{ id: 'none', name: 'No sheet', thicknessMm: 0.001, leastBridgeMm: 2, leastOpeningMm: 1, prints: [1000, 1000] }],
    forms: [
      {
        id: 'square',
        name: 'Square',
        outline: [
          [
            [0, 0],
            [cell, 0],
            [cell, cell],
            [0, cell],
          ],
        ],
      },
    ],
    cuts: inks.map((l, i) => ({
      id: l.toLowerCase(),
      name: l,
      parts: cells
        .filter((code) => code & (1 << i))
        .map((code) => ({ form: 'square', xMm: (code % across) * cell + cell / 2, yMm: Math.floor(code / across) * cell + cell / 2 })),
    })),
    layers: inks.map((l) => ({
      id: l.toLowerCase(),
      name: l,
      cut: l.toLowerCase(),
      side: 'window',
      ink: l.toLowerCase(),
      islands: 'drop',
    })),
    inks: inks.map((l) =>
      twoGrounds(l)
        ? {
            id: l.toLowerCase(),
            name: l,
            from: 'two-grounds',
            white: reading('W'),
            overWhite: reading(l),
            black: reading('K'),
            overBlack: reading(`K${l}`),
          }
        : { id: l.toLowerCase(), name: l, from: 'one-ground', ground: reading('W'), over: reading(l) },
    ),
    papers: [{ id: 'paper', name: 'Paper', reading: reading('W'), widthMm: 200, heightMm: 200, count: 5 }],
    proofReadings: (trial.taught ?? []).map((name) => ({
      paper: 'paper',
      layers: pressOrder(name).map((l) => l.toLowerCase()),
      reading: { kind: 'lab', lab: [...patchOf(patches, name).lab] },
    })),
  });
}

/** Off by so many steps of ΔE00, roughly, within what a reading may be. */
function photographed(lab: Lab, off: readonly [number, number, number]): Lab {
  const chroma = Math.hypot(lab[1], lab[2]) || 1;
  const sc = 1 + 0.045 * chroma,
    sh = 1 + 0.015 * chroma;
  const [ca, cb] = [lab[1] / chroma, lab[2] / chroma];
  return [
    Math.min(98, Math.max(3, lab[0] + off[0])),
    lab[1] + off[1] * sc * ca - off[2] * sh * cb,
    lab[2] + off[1] * sc * cb + off[2] * sh * ca,
  ];
}

const planner = createPlanner();

export function planned(job: Job): PlannedPaper {
  return planner.plan({ job, attachments: new Map() }).papers[0];
}

export interface Outcome {
  readonly name: string;
  /** ΔE00 of foreseen against measured. */
  readonly off: number;
  readonly band: number;
}

/** Every measured overlap that was not read, as the plan foresees it. */
export function outcomes(patches: Patches, trial: Trial = {}, but: readonly string[] = []): Outcome[] {
  const paper = planned(jobOf(patches, trial));
  const left = new Set([...(trial.taught ?? []), ...but].map((name) => pressOrder(name).join('')));
  return overlapsOf(patches).flatMap((name): Outcome[] => {
    if (left.has(name) || (trial.black !== true && name.includes('K'))) return [];
    if (trial.known === 'two-grounds' && name.length === 2 && name.startsWith('K')) return [];
    const overlap = paper.overlaps.find((o) => o.layers.join('') === name.toLowerCase())!;
    return [{ name, off: deltaE00(overlap.lab, patchOf(patches, name).lab), band: overlap.band }];
  });
}

export interface Summary {
  readonly n: number;
  readonly mean: number;
  readonly worst: number;
  /** Share within their band. */
  readonly within: number;
  readonly band: number;
  /** Mean band over mean error. */
  readonly wide: number;
}

export function summary(all: readonly Outcome[]): Summary {
  const mean = (of: (o: Outcome) => number): number => all.reduce((sum, o) => sum + of(o), 0) / all.length;
  return {
    n: all.length,
    mean: mean((o) => o.off),
    worst: Math.max(...all.map((o) => o.off)),
    within: mean((o) => (o.off <= o.band ? 1 : 0)),
    band: mean((o) => o.band),
    wide: mean((o) => o.band) / mean((o) => o.off),
  };
}

export function tell(s: Summary): string {
  return `${s.mean.toFixed(1)} / ${s.worst.toFixed(1)} over ${s.n}; ${(100 * s.within).toFixed(0)} % within a band of ${s.band.toFixed(1)} (${s.wide.toFixed(2)} × the error)`;
}
