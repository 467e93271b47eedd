/**
 * Weights of the 8-neighbour cut metric: a straight edge of any direction measures its length within a few percent
 * (Cauchy–Crofton on 4 directions; Boykov and Kolmogorov 2003). In pixels.
 */
export const straightWeight = Math.PI / 8;
export const diagonalWeight = Math.PI / (8 * Math.SQRT2);

/** What eight neighbours say: bit k of the number is neighbour k's ink, straight ones first; added up in this order. */
export const votesOf = Float64Array.from({ length: 256 }, (_, ink) => {
  let votes = 0;
  for (let k = 0; k < 8; k++) {
    const weight = k < 4 ? straightWeight : diagonalWeight;
    votes += (ink >> k) & 1 ? -weight : weight;
  }
  return votes;
});

/** Length of every layer's outline inside the image, in pixels. */
export function outlineLengths(codes: Uint8Array, width: number, height: number, layers: number): Float64Array {
  const counts = new Float64Array(256),
    diagonal = new Float64Array(256);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x,
        code = codes[i];
      if (x + 1 < width) counts[code ^ codes[i + 1]]++;
      if (y + 1 < height) {
        counts[code ^ codes[i + width]]++;
        if (x + 1 < width) diagonal[code ^ codes[i + width + 1]]++;
        if (x > 0) diagonal[code ^ codes[i + width - 1]]++;
      }
    }
  }
  const lengths = new Float64Array(layers);
  for (let change = 1; change < 256; change++) {
    const length = counts[change] * straightWeight + diagonal[change] * diagonalWeight;
    if (length > 0) for (let layer = 0; layer < layers; layer++) if (change & (1 << layer)) lengths[layer] += length;
  }
  return lengths;
}

/** Sum of the cost table over the picture. */
export function pictureCost(codes: Uint8Array, binOf: Uint16Array, table: Float32Array, codeCount: number, weight?: Float32Array): number {
  let sum = 0;
  if (weight) for (let i = 0; i < codes.length; i++) sum += weight[i] * table[binOf[i] * codeCount + codes[i]];
  else for (let i = 0; i < codes.length; i++) sum += table[binOf[i] * codeCount + codes[i]];
  return sum;
}
