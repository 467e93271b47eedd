import { readFileSync } from 'node:fs';
import fontkit from '@cantoo/fontkit';
import { expect, test } from 'vitest';
import { fontReader } from './fonts.ts';

interface Setter {
  layout(text: string, features?: object): { readonly glyphs: readonly { readonly id: number; readonly advanceWidth: number }[] };
}

test('words looked up once make the same glyphs as a text set whole', () => {
  const texts = [
    'Pull 3 of 16: flood, print, lift.',
    'Öfter schräg — “offizielle” Auflage, 2 × 1.5 mm; fi ffi fl  two  spaces ',
    'Αλφα Жёлтый 24 °C ≥ 60 % (ΔE₀₀ 1.2)',
    ' ',
    '',
    'تجربة  print',
  ];
  for (const weight of ['Regular', 'Semibold', 'Bold']) {
    const bytes = new Uint8Array(readFileSync(new URL(`../../../assets/OpenSans-${weight}.ttf`, import.meta.url)));
    const read = fontReader.create(bytes) as unknown as Setter,
      whole = fontkit.create(bytes) as unknown as Setter;
    const of = (setter: Setter, text: string): unknown =>
      setter.layout(text, { liga: false, kern: true }).glyphs.map(({ id, advanceWidth }) => [id, advanceWidth]);
    for (const text of [...texts, ...texts]) expect(of(read, text), `${weight} ${text}`).toEqual(of(whole, text));
  }
});
