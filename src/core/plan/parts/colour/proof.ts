import { labFromSpectrum, srgbFromXyz, xyzFromSpectrum, type Spectrum } from '../../../colour/index.ts';
import { overlapSpectra, type Surface } from '../../../ink/index.ts';
import type { Job, JobBundle } from '../../../job/index.ts';
import {
  codeAreas,
  groundUnder,
  layerCodes,
  overlapIndex,
  proofGrid,
  type CodedLayer,
  type Codes,
  type RgbPicture,
} from '../../../print/index.ts';
import type { FoundInks } from './inks.ts';
import type { Memory } from '../../memory.ts';
import type { PrintedLayer } from './let-down.ts';
import type { CodeColours } from '../cut/stencils.ts';

/** Codes of the print at proof density. By bit, so that a new order of the layers gives the same codes. */
export function codesOf(image: Job['image'], layers: readonly CodedLayer[], memory: Memory): Codes {
  const byBit = [...layers].sort((a, b) => a.bit - b.bit);
  return memory.part('codes', { image, layers: byBit }, makeCodes, 2);
}

function makeCodes({ image, layers }: { readonly image: Job['image']; readonly layers: readonly CodedLayer[] }): Codes {
  return layerCodes(layers, proofGrid(image.widthMm, image.heightMm));
}

/** Area of each of the 256 codes, mm². */
export function areasOf(codes: Codes, memory: Memory): Float64Array {
  return memory.part('areas', { codes }, makeAreas);
}

const makeAreas = ({ codes }: { readonly codes: Codes }): Float64Array => codeAreas(codes);

/** Lab of every code on a paper, open layers printing nothing. */
export function codeColours(paper: Spectrum, printed: readonly PrintedLayer[], surface: Surface): CodeColours {
  const spectra = overlapSpectra(
    paper,
    printed.map((p) => p.film),
    surface,
  );
  const bits = printed.map((p) => p.bit);
  const rows = 1 << printed.length;
  const lab = Array.from({ length: rows }, (_, row) => labFromSpectrum(spectra.subarray(row * 36, row * 36 + 36)));
  const labOfCode = new Float64Array(256 * 3);
  for (let code = 0; code < 256; code++) labOfCode.set(lab[overlapIndex(code, bits)], code * 3);
  return { labOfCode };
}

/** Pictures of earlier prints, laid under the codes' pixels. */
export function groundsOf(
  bundle: JobBundle & { readonly pictures?: ReadonlyMap<string, RgbPicture> },
  found: FoundInks,
  codes: Codes,
  memory: Memory,
): Map<string, Uint8Array> {
  const grounds = new Map<string, Uint8Array>();
  for (const paper of bundle.job.papers) {
    const picture = paper.printed && bundle.pictures?.get(paper.printed.picture);
    const spectrum = found.papers.get(paper.id);
    if (!paper.printed || !picture || !spectrum) continue;
    const { atMm = [0, 0], widthMm = bundle.job.image.widthMm } = paper.printed;
    const size = { width: codes.width, height: codes.height, mmPerPx: codes.mmPerPx };
    const { rgb } = srgbFromXyz(xyzFromSpectrum(spectrum));
    grounds.set(paper.id, memory.part(`ground ${paper.id}`, { picture, placed: { atMm, widthMm }, size, rgb }, makeGround, 2));
  }
  return grounds;
}

interface GroundReads {
  readonly picture: RgbPicture;
  readonly placed: Parameters<typeof groundUnder>[1];
  readonly size: Parameters<typeof groundUnder>[2];
  readonly rgb: Parameters<typeof groundUnder>[3];
}

const makeGround = ({ picture, placed, size, rgb }: GroundReads): Uint8Array => groundUnder(picture, placed, size, rgb);
