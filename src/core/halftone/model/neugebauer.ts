import { pow } from '../../numeric/index.ts';
import { BANDS } from '../../colour/index.ts';

/** As a value of its own: read through an import it costs more than the sums around it. */
const bands36 = BANDS;

/**
 * Neugebauer 1937: what is seen of dots is the mean of all overlaps by the area each has, dots of several inks falling on one another
 * by chance (Demichel 1924). Light that enters beside a dot and leaves through it is met by taking the mean on the n-th roots
 * (Yule and Nielsen 1951, on spectra as by Viggiano 1985).
 * @param roots 2^k × 36: n-th root of each overlap's reflectance; bit i of the row set where ink i lies
 * @param shares k × 36: what ink i covers, as each band sees it
 * @param room as long as `roots`: used up
 * @param out 36 reflectances
 */
export function meanOfOverlaps(
  roots: Float64Array,
  shares: Float64Array,
  k: number,
  n: number,
  room: Float64Array,
  out: Float64Array,
): void {
  room.set(roots);
  // Fold the overlaps with and without the last ink into one another, ink by ink.
  for (let i = k - 1; i >= 0; i--) {
    const half = (1 << i) * bands36;
    const from = i * bands36;
    for (let at = 0, band = 0; at < half; at++) {
      room[at] += shares[from + band] * (room[half + at] - room[at]);
      if (++band === bands36) band = 0;
    }
  }
  if (n === 1) for (let b = 0; b < bands36; b++) out[b] = room[b];
  else for (let b = 0; b < bands36; b++) out[b] = pow(room[b], n);
}

/** Share of each overlap where inks cover so much, 2^k of them. */
export function overlapShares(coverages: ArrayLike<number>, k: number): Float64Array {
  const out = new Float64Array(1 << k);
  out[0] = 1;
  for (let i = 0; i < k; i++) {
    const half = 1 << i;
    for (let row = 0; row < half; row++) {
      out[half + row] = out[row] * coverages[i];
      out[row] *= 1 - coverages[i];
    }
  }
  return out;
}

export function rootsOf(spectra: Float64Array, n: number): Float64Array {
  return spectra.map((r) => pow(Math.max(r, 1e-5), 1 / n));
}
