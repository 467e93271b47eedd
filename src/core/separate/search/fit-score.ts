/** Colours to be met, prepared for asking many times how well a set of overlaps meets them. */
export interface Targets {
  /** 3 a colour */
  readonly lab: Float64Array;
  /** Sum is 1. */
  readonly weight: Float64Array;
  /** Per colour: L scale, then the quadratic form on (a, b): aa, ab, bb. */
  readonly form: Float64Array;
  readonly count: number;
  /** Which colours lie side by side in the picture, and what their edges cost when they are printed by different codes. */
  readonly edges?: Edges;
}

/** Pairs of colours and the price of the edge between them for each layer that it has to be cut in, as ΔE00 over the whole picture. */
export interface Edges {
  readonly a: Uint16Array;
  readonly b: Uint16Array;
  readonly price: Float64Array;
}

/**
 * Local ΔE00 around each colour as a quadratic form, good enough to tell which overlap is nearest; the difference itself
 * is then worked out exactly. Form from the CIEDE2000 weights at the colour, its stretching of a near grey among them
 * (Sharma et al. 2005); rotation left out.
 */
export function targetsOf(lab: Float64Array, weight: Float64Array): Targets {
  const count = weight.length;
  const form = new Float64Array(count * 4);
  let sum = 0;
  for (let i = 0; i < count; i++) sum += weight[i];
  for (let i = 0; i < count; i++) {
    const l = lab[i * 3],
      a = lab[i * 3 + 1],
      b = lab[i * 3 + 2];
    const c7 = Math.hypot(a, b) ** 7,
      stretch = 1 + 0.5 * (1 - Math.sqrt(c7 / (c7 + 25 ** 7)));
    const chroma = Math.hypot(a * stretch, b),
      hue = Math.atan2(b, a * stretch);
    const l50 = (l - 50) ** 2;
    const sl = 1 + (0.015 * l50) / Math.sqrt(20 + l50);
    const sc = 1 + 0.045 * chroma;
    const rad = Math.PI / 180;
    const t =
      1 -
      0.17 * Math.cos(hue - 30 * rad) +
      0.24 * Math.cos(2 * hue) +
      0.32 * Math.cos(3 * hue + 6 * rad) -
      0.2 * Math.cos(4 * hue - 63 * rad);
    const sh = 1 + 0.015 * chroma * t;
    const c = Math.cos(hue),
      s = Math.sin(hue),
      u = 1 / (sc * sc),
      v = 1 / (sh * sh);
    form[i * 4] = 1 / (sl * sl);
    form[i * 4 + 1] = (u * c * c + v * s * s) * stretch * stretch;
    form[i * 4 + 2] = 2 * c * s * (u - v) * stretch;
    form[i * 4 + 3] = u * s * s + v * c * c;
  }
  return { lab, form, count, weight: weight.map((w) => w / sum) };
}

/** Which colours are printed by which code, as a list of the pairs that occur. */
export interface Use {
  readonly target: Uint16Array;
  readonly code: Uint8Array;
  readonly share: Float64Array;
}
