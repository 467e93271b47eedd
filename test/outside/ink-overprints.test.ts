import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { deltaE00, labFromSpectrum, labFromXyz, type Lab, type Spectrum, type Xyz } from '../../src/core/colour/index.ts';
import {
  darkestOf,
  filmOf,
  inkOverOneGround,
  learn,
  spectrumFromReading,
  stackReflectance,
  type Surface,
} from '../../src/core/ink/index.ts';

interface Patch {
  readonly lab: Lab;
  readonly xyz: readonly number[];
  readonly reflectance?: readonly number[];
}
type Patches = Readonly<Record<string, Patch>>;
const read = <T>(name: string): T => JSON.parse(readFileSync(new URL(`data/${name}.json`, import.meta.url), 'utf8')) as T;

// Characterisation data of offset printing (FOGRA28L, 29L, 39L, TR003) and a laminated proof; sources in data/overprints.json.
const { LAMINATED_PROOF, ...offset } = Object.fromEntries(
  Object.entries(read<{ conditions: Record<string, { patches: Patches }> }>('overprints').conditions).map(([k, v]) => [k, v.patches]),
);
// Five more conditions on which no figure was chosen; sources in data/overprints-held.json.
const held = read<{ conditions: Record<string, Patches> }>('overprints-held').conditions;

/** Offset prints black first (common practice: K C M Y), wet on wet. */
const pressOrder = (name: string): string[] => [...name].sort((a, b) => 'KCMY'.indexOf(a) - 'KCMY'.indexOf(b));
const overlapsOf = (patches: Patches): string[] => Object.keys(patches).filter((name) => name.length > 1);
const withoutBlack = (name: string): boolean => !name.includes('K');

interface Errors {
  readonly mean: number;
  readonly worst: number;
  readonly n: number;
}
const summary = (errors: readonly number[]): Errors => ({
  mean: errors.reduce((a, b) => a + b, 0) / errors.length,
  worst: Math.max(...errors),
  n: errors.length,
});

function foreseen(patches: Patches, gloss: number, trapping: number, pick: (name: string) => boolean, spectra = false): number[] {
  const spectrum = (name: string): Spectrum =>
    spectra ? Float64Array.from(patches[name].reflectance!) : spectrumFromReading({ kind: 'lab', lab: patches[name].lab }, name);
  const inks = ['C', 'M', 'Y', 'K'].filter((l) => patches[l]);
  const surface: Surface = { ks: gloss * darkestOf(inks.map(spectrum)), k1: 0.04, k2: 0.6 };
  const paper = spectrum('W');
  const ink = Object.fromEntries(inks.map((l) => [l, inkOverOneGround({ ink: spectrum(l), ground: paper, surface }).ink]));
  return overlapsOf(patches)
    .filter(pick)
    .map((name) => {
      const films = pressOrder(name).map((l, j) => filmOf(ink[l], 1, trapping ** j));
      return deltaE00(labFromSpectrum(stackReflectance(paper, films, surface)), patches[name].lab);
    });
}

/** What a picture program does: multiply the layers' colours. */
function multiplied(patches: Patches, pick: (name: string) => boolean): number[] {
  const white = patches.W.xyz;
  return overlapsOf(patches)
    .filter(pick)
    .map((name) => {
      const xyz = [0, 1, 2].map((k) => [...name].reduce((v, l) => (v * patches[l].xyz[k]) / white[k], white[k]) / 100) as unknown as Xyz;
      return deltaE00(labFromXyz(xyz), patches[name].lab);
    });
}

/** One dark overlap of three layers is measured too, and teaches gloss and trapping; the rest is foreseen. */
function afterOneDarkPatch(patches: Patches, pick: (name: string) => boolean): number[] {
  const letters = ['C', 'M', 'Y', 'K'];
  const spectrum = (name: string): Spectrum => spectrumFromReading({ kind: 'lab', lab: patches[name].lab }, name);
  const darkest = darkestOf(letters.map(spectrum));
  const surface: Surface = { ks: 0.8 * darkest, k1: 0.04, k2: 0.6 };
  const paper = spectrum('W');
  const found = learn({
    paper,
    surface,
    darkest,
    layers: letters.map((l) => ({
      id: l,
      name: l,
      strength: 1,
      deposit: 1,
      inkUnder: (s) => inkOverOneGround({ ink: spectrum(l), ground: paper, surface: s }).ink,
    })),
    observations: [{ stack: pressOrder('CMY').map((l) => letters.indexOf(l)), lab: patches.CMY.lab, sigma: 0.3, place: 'CMY' }],
    // The singles were read from the same print, so their deposit is known; wet on wet.
    priors: { depositSigma: 0.02, trapping: 0.85, trappingSigma: 0.1, ksSigma: 0.3, modelSigma: 0.5 },
  });
  return overlapsOf(patches)
    .filter((name) => name !== 'CMY' && pick(name))
    .map((name) => deltaE00(found.foresee(pressOrder(name).map((l) => letters.indexOf(l))), patches[name].lab));
}

const all = (): boolean => true;
const rows: string[] = [];
const row = (what: string, e: Errors, rival?: Errors): void => {
  rows.push(
    `${what.padEnd(62)} ${e.mean.toFixed(1)} / ${e.worst.toFixed(1)} over ${e.n}${rival ? `   multiplying colours: ${rival.mean.toFixed(1)} / ${rival.worst.toFixed(1)}` : ''}`,
  );
};
const over = (sets: Readonly<Record<string, Patches>>, errors: (p: Patches) => number[]): Errors =>
  summary(Object.values(sets).flatMap(errors));

describe('overlaps foreseen from single inks, mean / worst ΔE00 against measured ones', () => {
  test('true spectra, dried films: at most 2 / 4', () => {
    const ours = summary(foreseen(LAMINATED_PROOF, 0.5, 1, all, true)),
      rival = summary(multiplied(LAMINATED_PROOF, all));
    row('laminated proof, spectra', ours, rival);
    expect(ours.mean).toBeLessThan(2);
    expect(ours.worst).toBeLessThan(4);
    expect(ours.mean).toBeLessThan(rival.mean / 3);
  });
  test.each([
    ['the conditions of the trial', offset],
    ['conditions no figure was chosen on', held],
  ] as const)('Lab of the single inks alone, colours: at most 4 / 9 — %s', (name, sets) => {
    const ours = over(sets, (p) => foreseen(p, 0.8, 0.85, withoutBlack)),
      rival = over(sets, (p) => multiplied(p, withoutBlack));
    row(`Lab alone, overlaps of colours; ${name}`, ours, rival);
    expect(ours.mean).toBeLessThan(4);
    expect(ours.worst).toBeLessThan(9);
    expect(ours.mean).toBeLessThan(rival.mean / 1.5);
  });
  test.each([
    ['the conditions of the trial', offset],
    ['conditions no figure was chosen on', held],
  ] as const)('with black as one of the inks it is less sure, and still far nearer than multiplying — %s', (name, sets) => {
    const ours = over(sets, (p) => foreseen(p, 0.5, 0.85, all)),
      rival = over(sets, (p) => multiplied(p, all));
    row(`Lab alone, overlaps with black too; ${name}`, ours, rival);
    expect(ours.mean).toBeLessThan(5);
    expect(ours.worst).toBeLessThan(11);
    expect(ours.mean).toBeLessThan(rival.mean / 1.8);
  });
  test.each([
    ['the conditions of the trial', offset],
    ['conditions no figure was chosen on', held],
  ] as const)('Lab and one measured dark overlap: at most 3 / 7 — %s', (name, sets) => {
    const ours = over(sets, (p) => afterOneDarkPatch(p, withoutBlack));
    row(`Lab and one dark patch, overlaps of colours; ${name}`, ours);
    row(
      `Lab and one dark patch, overlaps with black too; ${name}`,
      over(sets, (p) => afterOneDarkPatch(p, all)),
    );
    expect(ours.mean).toBeLessThan(3);
    expect(ours.worst).toBeLessThan(7);
    console.log(rows.splice(0).join('\n'));
  });
});
