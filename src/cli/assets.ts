import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareDrawings } from '../core/form/index.ts';

const require = createRequire(import.meta.url);

/** The fonts that the packet embeds. */
export function readFonts(): { regular: Uint8Array; semibold: Uint8Array; bold: Uint8Array } {
  const read = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../assets/OpenSans-${name}.ttf`, import.meta.url)));
  return { regular: read('Regular'), semibold: read('Semibold'), bold: read('Bold') };
}

/** Makes ready what reads drawings; once per process. */
export async function prepare(): Promise<void> {
  await prepareDrawings(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm')));
}
