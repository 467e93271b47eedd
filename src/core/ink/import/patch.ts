import { BANDS, wavelengthsNm } from '../../colour/index.ts';
import { problem, type Problem } from '../../problem.ts';
import { name as asName, say, sentences, type Saying } from '../../../words/say.ts';
import { faultsOf } from '../reading/reading.ts';
import type { Reading } from '../types.ts';

/** One patch out of a file: the best reading it holds (spectrum before XYZ before Lab), and what else was beside it. */
export interface ReadPatch {
  readonly name: string;
  readonly reading: Reading;
  /** Amounts of the device's inks where the file gives them, as written: `CMYK_C` → 100. */
  readonly amounts?: Readonly<Record<string, number>>;
}

export interface ReadFile {
  readonly format: 'cgats' | 'cxf' | 'csv';
  readonly patches: readonly ReadPatch[];
  /** Keywords of the file that say how it was measured. */
  readonly about: Readonly<Record<string, string>>;
  readonly problems: readonly Problem[];
}

/** What a patch held before anything is chosen. */
export interface RawPatch {
  readonly name: string;
  readonly place: Saying;
  readonly spectrum?: { readonly wavelengthsNm: readonly number[]; readonly values: readonly number[] } | undefined;
  readonly xyz?: readonly [number, number, number] | undefined;
  readonly lab?: readonly [number, number, number] | undefined;
  readonly amounts?: Readonly<Record<string, number>> | undefined;
}

/** No file of readings has more (common practice: the largest targets have some 2,000 patches). */
export const mostPatches = 20_000;

/**
 * Chooses a reading for every patch. Spectra in percent are told by values above 2 anywhere in the file.
 * Patches without a usable reading are left out, each with a problem.
 */
export function choosePatches(raw: readonly RawPatch[], file: Saying): { readonly patches: ReadPatch[]; readonly problems: Problem[] } {
  const problems: Problem[] = [];
  const percent = raw.some((p) => p.spectrum?.values.some((v) => v > 2));
  const patches: ReadPatch[] = [];
  let extended = false;
  for (const p of raw) {
    let reading: Reading | undefined;
    if (p.spectrum) {
      const ours = onBands(
        p.spectrum.wavelengthsNm,
        p.spectrum.values.map((v) => (percent ? v / 100 : v)),
      );
      if (ours) {
        reading = { kind: 'spectrum', values: ours.values };
        extended ||= ours.extended;
      }
    }
    if (!reading && p.xyz) reading = { kind: 'xyz', xyz: p.xyz };
    if (!reading && p.lab) reading = { kind: 'lab', lab: p.lab };
    if (!reading) {
      problems.push(
        problem(
          'warning',
          'patch-without-colour',
          p.place,
          say('readings.patchWithoutColour', { patch: asName(p.name) }),
          say('readings.leftOutReadAgain'),
        ),
      );
      continue;
    }
    const faults = faultsOf(reading);
    for (const f of faults)
      problems.push(problem('warning', f.code, p.place, f.message, sentences(say('readings.patchLeftOut'), f.advice)));
    if (faults.length === 0) patches.push(p.amounts ? { name: p.name, reading, amounts: p.amounts } : { name: p.name, reading });
  }
  if (extended) {
    problems.push(problem('note', 'spectrum-extended', file, say('readings.spectraShort'), say('readings.endsCarriedOn')));
  }
  return { patches, problems };
}

/** A spectrum at any wavelengths → our bands, straight lines between; undefined when it covers too little. */
function onBands(nm: readonly number[], values: readonly number[]): { values: number[]; extended: boolean } | undefined {
  const known = nm
    .map((w, i) => [w, values[i]] as const)
    .filter(([w, v]) => Number.isFinite(w) && Number.isFinite(v))
    .sort((a, b) => a[0] - b[0]);
  if (known.length < 10 || known[0][0] > 420 || known[known.length - 1][0] < 680) return undefined;
  for (let i = 1; i < known.length; i++) if (known[i][0] - known[i - 1][0] > 25) return undefined;
  const out: number[] = [];
  let at = 0;
  for (let band = 0; band < BANDS; band++) {
    const w = wavelengthsNm[band];
    while (at < known.length - 2 && known[at + 1][0] < w) at++;
    const [w0, v0] = known[at],
      [w1, v1] = known[at + 1];
    const f = Math.min(1, Math.max(0, w1 === w0 ? 0 : (w - w0) / (w1 - w0)));
    out.push(f === 0 ? v0 : f === 1 ? v1 : v0 + (v1 - v0) * f);
  }
  return { values: out, extended: known[0][0] > 380 || known[known.length - 1][0] < 730 };
}

/** `0.52`, `0,52`, `5.2e-1` → number; anything else NaN. */
export function numberOf(text: string): number {
  const t = text.trim().replace(/^[−–]/, '-');
  if (/^[-+]?\d+,\d+$/.test(t)) return Number(t.replace(',', '.'));
  return /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(t) ? Number(t) : NaN;
}

/** `SPEC_380`, `nm380`, `SPECTRAL_NM_380`, `R_380.0`, `380`, `380 nm` → 380. */
export function wavelengthOfField(field: string): number | undefined {
  const found = /^(?:spec(?:tral)?|nm|r|spectral_?nm)?[_ ]?(\d{3,4}(?:\.\d+)?) ?(?:nm)?$/i.exec(field.trim());
  const w = found ? Number(found[1]) : NaN;
  return w >= 300 && w <= 1100 ? w : undefined;
}

/** Warns where colours were worked out for other light than ours. */
export function lightProblems(words: string, file: Saying): Problem[] {
  const out: Problem[] = [];
  if (/\bD65\b|\bD55\b|\bF(?:2|7|11)\b|ILLUMINANT[ _,"]+A\b/i.test(words)) {
    out.push(problem('warning', 'other-light', file, say('readings.otherLight'), say('readings.exportForD50')));
  }
  if (/\b10[ _]?(?:degree|deg|°)/i.test(words)) {
    out.push(problem('warning', 'other-observer', file, say('readings.otherObserver'), say('readings.exportFor2')));
  }
  return out;
}
