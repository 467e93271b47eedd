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
  while (open.length > 0) {
    let worst = open[0], most = -1, mask = new Uint8Array(0);
    for (const layer of open) {
      const before = codes.map((code) => (code >> layer) & 1);
      const after = cuttableMask(before, width, height, rules);
      let changed = 0;
      for (let i = 0; i < after.length; i++) changed += before[i] ^ after[i];
      if (changed > most) {
        most = changed;
        worst = layer;
        mask = new Uint8Array(after);
      }
    }
    const bits = pairs ? 3 << worst : 1 << worst;
    for (let i = 0; i < codes.length; i++) {
      const bit = pairs ? (mask[i] ? 1 << worst : 2 << worst) : mask[i] << worst;
      codes[i] = (codes[i] & ~bits) | bit;
    }
    frozen |= bits;
    open = open.filter((layer) => layer !== worst);
    if (open.length > 0) for (let turn = 0; turn < 4; turn++) if (relax({ ...field, frozen }, codes) === 0) break;
  }
}
