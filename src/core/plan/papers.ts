import { labFromSpectrum, labFromXyz, srgbFromXyz, xyzFromSpectrum, type Spectrum } from '../colour/index.ts';
import { clearInk, filmOf, mixInks, modelBand, overlapColours, overlapSpectra, spectrumFromReading, stackReflectance, type Film, type Ink, type ModelBand } from '../ink/index.ts';
import type { Job, JobLayer, JobPaper } from '../job/index.ts';
import { groundCube, overlapIndex, paletteOf } from '../print/index.ts';
import type { FoundInks } from './inks.ts';
import type { OverPicture, PlannedOverlap, PlannedPaper, Swatch } from './types.ts';

/** A layer that prints: its bit in the codes and the film it leaves. */
export interface PrintedLayer {
  readonly id: string;
  readonly bit: number;
  readonly film: Film;
}

/** The film a layer leaves: its ink at its strength, let down with its base. */
export function filmOfLayer(layer: Pick<JobLayer, 'ink' | 'strength' | 'base'>, found: FoundInks): Film | null {
  const ink = layer.ink === null ? undefined : found.inks.get(layer.ink);
  return ink ? filmOf(letDown(ink, layer.strength, layer.base === undefined ? undefined : found.inks.get(layer.base))) : null;
}

/** Ink and base by volume. A clear base adds nothing but volume. */
export function letDown(ink: Ink, strength: number, base: Ink = clearInk()): Ink {
  return mixInks([{ ink, share: strength }, { ink: base, share: 1 - strength }]);
}

export function swatchOf(R: Spectrum): Swatch {
  const xyz = xyzFromSpectrum(R);
  const { hex, inGamut } = srgbFromXyz(xyz);
  return { lab: labFromXyz(xyz), srgb: hex, inGamut };
}

/** One ink alone on a paper. */
export function inkSwatch(ink: Ink, paper: Spectrum, found: FoundInks): Swatch {
  return swatchOf(stackReflectance(paper, [filmOf(ink)], found.surface));
}

/**
 * Every overlap on one paper.
 * @param layers those that print, first down first
 * @param areasMm2 of all 256 codes (open layers' bits included)
 */
export function planPaper(
  paper: JobPaper, job: Pick<Job, 'proofReadings'>, found: FoundInks, layers: readonly PrintedLayer[], areasMm2: Float64Array, ground: OverPicture['ground'] | null,
): PlannedPaper | null {
  const spectrum = found.papers.get(paper.id);
  if (!spectrum) return null;
  const bits = layers.map((l) => l.bit);
  const colours = overlapColours(overlapSpectra(spectrum, layers.map((l) => l.film), found.surface));
  const measured = applyReadings(paper, job, layers, colours);
  const rows = 1 << layers.length;
  const areas = new Float64Array(rows);
  for (let code = 0; code < 256; code++) areas[overlapIndex(code, bits)] += areasMm2[code];

  const bands = Array.from({ length: layers.length + 1 }, (_, n): ModelBand => modelBand(found.kind, n));
  const overlaps: PlannedOverlap[] = [];
  for (let row = 0; row < rows; row++) {
    if (areas[row] === 0 && row !== 0) continue;
    const ids = layers.filter((_, i) => row & (1 << i)).map((l) => l.id);
    overlaps.push({
      code: layers.reduce((code, l, i) => (row & (1 << i) ? code | (1 << l.bit) : code), 0),
      layers: ids,
      lab: [colours.lab[row * 3], colours.lab[row * 3 + 1], colours.lab[row * 3 + 2]],
      srgb: hexOf(colours.rgb, row),
      inGamut: colours.inGamut[row] === 1,
      band: measured.get(row) ?? (row === 0 ? 0.5 : bands[ids.length].usual),
      areaMm2: areas[row],
      measured: measured.has(row),
    });
  }
  return {
    id: paper.id, name: paper.name, swatch: swatchOf(spectrum), overlaps,
    palette: paletteOf(colours.rgb, bits),
    progressive: layers.map((_, i) => paletteOf(colours.rgb, bits, i + 1)),
    bandNote: bands[bands.length - 1].note,
    overPicture: ground && overPicture(ground, layers, found),
  };
}

/** A measured overlap is shown as measured. Returns its doubt by row. */
function applyReadings(paper: JobPaper, job: Pick<Job, 'proofReadings'>, layers: readonly PrintedLayer[], colours: ReturnType<typeof overlapColours>): Map<number, number> {
  const measured = new Map<number, number>();
  for (const proof of job.proofReadings) {
    if (proof.paper !== paper.id || !proof.layers.every((id) => layers.some((l) => l.id === id))) continue;
    const row = layers.reduce((code, l, i) => (proof.layers.includes(l.id) ? code | (1 << i) : code), 0);
    const R = spectrumFromReading(proof.reading, 'proofReadings');
    const shown = srgbFromXyz(xyzFromSpectrum(R));
    colours.lab.set(labFromSpectrum(R), row * 3);
    colours.rgb.set(shown.rgb, row * 3);
    colours.inGamut[row] = shown.inGamut ? 1 : 0;
    measured.set(row, proof.reading.sigma ?? (proof.reading.kind === 'photo' ? 4 : 0.5));
  }
  return measured;
}

function hexOf(rgb: Uint8Array, row: number): string {
  return `#${[0, 1, 2].map((c) => rgb[row * 3 + c].toString(16).padStart(2, '0')).join('')}`;
}

function overPicture(ground: Uint8Array, layers: readonly PrintedLayer[], found: FoundInks): OverPicture {
  const cube = groundCube(layers.map((l) => l.film), found.surface);
  const bits = layers.map((l) => l.bit);
  const rowOfCode = (runs: number): Uint8Array => Uint8Array.from({ length: 256 }, (_, code) => overlapIndex(code, bits, runs));
  return { ground, cube, rowOfCode: rowOfCode(layers.length), progressive: layers.map((_, i) => rowOfCode(i + 1)) };
}
