import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareDrawings, prepareLetters } from '../core/form/index.ts';
import { prepareFaces, preparePictures } from '../core/separate/index.ts';
import { codeFolder } from './code-folder.ts';

const require = createRequire(import.meta.url);

/** The fonts that the packet embeds. */
export function readFonts(): { regular: Uint8Array; semibold: Uint8Array; bold: Uint8Array } {
  const read = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../assets/OpenSans-${name}.ttf`, codeFolder)));
  return { regular: read('Regular'), semibold: read('Semibold'), bold: read('Bold') };
}

/** Makes ready what reads drawings and finds faces; once per process. Pictures are read apart (`read-picture.ts`). */
export async function prepare(): Promise<void> {
  prepareLetters(readFonts());
  prepareFaceFinding();
  await prepareDrawings(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm')));
}

/** For whatever asks what matters in a picture. */
export function prepareFaceFinding(): void {
  prepareFaces(new Uint8Array(readFileSync(new URL('core/image/faces/faces.bin', codeFolder))));
}

/** In the thread that reads pictures. */
export async function preparePictureReaders(): Promise<void> {
  const compile = (file: string | URL): WebAssembly.Module =>
    new WebAssembly.Module(readFileSync(typeof file === 'string' ? require.resolve(file) : file));
  await preparePictures({
    jpeg: compile('@jsquash/jpeg/codec/dec/mozjpeg_dec.wasm'),
    webp: compile('@jsquash/webp/codec/dec/webp_dec.wasm'),
    profiles: compile(new URL('core/image/lcms/lcms.wasm', codeFolder)),
  });
}
