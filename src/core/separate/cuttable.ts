import { closed, opened, withoutSpecks } from './kernels/morph.ts';
import { relax, type Field } from './kernels/relax.ts';

/** What knife and material demand, in pixels of the raster. */
export interface CutRules {
  readonly openingPx: number;
  readonly paperPx: number;
  /** Parts of ink smaller than this are not worth a cut, paper islands smaller than this not worth a bridge; px. */
  readonly leastInkPx: number;
  readonly leastIslandPx: number;
}

/** One layer's mask with nothing narrower than the knife and the material allow. */
export function cuttableMask(mask: Uint8Array, width: number, height: number, rules: CutRules): Uint8Array {
  let out = withoutSpecks(withoutSpecks(mask, width, height, 0, rules.leastIslandPx), width, height, 1, rules.leastInkPx);
  for (let turn = 0; turn < 2; turn++) {
    out = closed(out, width, height, rules.paperPx / 2);
    out = opened(out, width, height, rules.openingPx / 2);
  }
  return withoutSpecks(withoutSpecks(out, width, height, 0, rules.leastIslandPx), width, height, 1, rules.leastInkPx);
}

/**
 * Every layer made cuttable, the largest change first; after each one the layers still open settle again around it,
 * so that they take up what it lost. `codes` is changed in place.
 * @param pairs two layers a cut: the second is the first turned round
 */
export function makeCuttable(field: Field, codes: Uint8Array, rules: CutRules, pairs: boolean): void {
  const { width, height, layers } = field;
  let open = Array.from({ length: layers }, (_, i) => i).filter((i) => !(field.frozen & (1 << i)));
  if (pairs) open = open.filter((_, i) => i % 2 === 0);
  let frozen = field.frozen;
  const maskOf = (layer: number): Uint8Array => {
    const mask = new Uint8Array(codes.length);
    for (let i = 0; i < mask.length; i++) mask[i] = (codes[i] >> layer) & 1;
    return mask;
  };
  const loss = open.map((layer) => {
    const before = maskOf(layer), after = cuttableMask(before, width, height, rules);
    let changed = 0;
    for (let i = 0; i < after.length; i++) changed += before[i] ^ after[i];
    return { layer, changed };
  });
  loss.sort((a, b) => b.changed - a.changed || a.layer - b.layer);
  for (const [turn, { layer }] of loss.entries()) {
    const mask = cuttableMask(maskOf(layer), width, height, rules);
    const bits = pairs ? 3 << layer : 1 << layer;
    for (let i = 0; i < codes.length; i++) {
      const bit = pairs ? (mask[i] ? 1 << layer : 2 << layer) : mask[i] << layer;
      codes[i] = (codes[i] & ~bits) | bit;
    }
    frozen |= bits;
    if (turn + 1 < loss.length) for (let round = 0; round < 4; round++) if (relax({ ...field, frozen }, codes) < codes.length * 2e-5) break;
  }
}
