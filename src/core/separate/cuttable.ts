import { closed, dilate, opened, withoutSpecks } from './kernels/morph.ts';
import { relaxed, type Field } from './kernels/relax.ts';
import { energyOf } from './masks.ts';

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
 * so that they take up what it lost. Then each layer once more around the others as they have become by then, kept where
 * the print gains. `codes` is changed in place.
 * @param pairs two layers a cut: the second is the first turned round
 * @param again how often all layers are gone over again
 */
export function makeCuttable(field: Field, codes: Uint8Array, rules: CutRules, pairs: boolean, again = 0): void {
  const { width, height, layers } = field;
  const all = (1 << layers) - 1;
  const open = Array.from({ length: layers }, (_, i) => i).filter((i) => !(field.frozen & (1 << i))).filter((_, i) => !pairs || i % 2 === 0);
  const bitsOf = (layer: number): number => (pairs ? 3 : 1) << layer;
  const put = (layer: number): Uint8Array => {
    const mask = cuttableMask(maskOf(codes, layer), width, height, rules), bits = bitsOf(layer), changed = new Uint8Array(codes.length);
    for (let i = 0; i < codes.length; i++) {
      const code = (codes[i] & ~bits) | (pairs ? (mask[i] ? 1 << layer : 2 << layer) : mask[i] << layer);
      if (code !== codes[i]) changed[i] = 1;
      codes[i] = code;
    }
    return changed;
  };
  let frozen = field.frozen;
  for (const [turn, layer] of byLoss(open, codes, width, height, rules).entries()) {
    const changed = put(layer);
    frozen |= bitsOf(layer);
    // Only around what went is there anything to take up: elsewhere masks stay as they were thought out, traps too.
    if (turn + 1 < open.length) relaxed({ ...field, frozen }, codes, 4, 2e-5, dilate(changed, width, height, 1.5));
  }
  for (let round = 0; round < again; round++) {
    for (const layer of open) {
      const before = codes.slice(), energy = energyOf(field, codes, 1);
      relaxed({ ...field, frozen: all & ~bitsOf(layer) }, codes, 4, 2e-5);
      put(layer);
      if (energyOf(field, codes, 1) >= energy) codes.set(before);
    }
  }
}

function byLoss(open: readonly number[], codes: Uint8Array, width: number, height: number, rules: CutRules): number[] {
  const loss = open.map((layer) => {
    const before = maskOf(codes, layer), after = opened(closed(before, width, height, rules.paperPx / 2), width, height, rules.openingPx / 2);
    let changed = 0;
    for (let i = 0; i < after.length; i++) changed += before[i] ^ after[i];
    return { layer, changed };
  });
  return loss.sort((a, b) => b.changed - a.changed || a.layer - b.layer).map(({ layer }) => layer);
}

function maskOf(codes: Uint8Array, layer: number): Uint8Array {
  const mask = new Uint8Array(codes.length);
  for (let i = 0; i < mask.length; i++) mask[i] = (codes[i] >> layer) & 1;
  return mask;
}
