import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { prepareFaces, preparePictures } from '../src/core/separate/index.ts';

/** A picture of `test/pictures`. */
export async function testPicture(file: string): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await readFile(new URL(`../test/pictures/${file}`, import.meta.url)));
}

/** A file of an installed package. */
export function packageFile(path: string): Promise<Uint8Array<ArrayBuffer>> {
  return readFile(fileURLToPath(new URL(`../node_modules/${path}`, import.meta.url))).then((bytes) => new Uint8Array(bytes));
}

/** The picture readers, from node_modules. */
export async function prepareReaders(): Promise<void> {
  const compiled = async (path: string): Promise<WebAssembly.Module> => WebAssembly.compile(await packageFile(path));
  await preparePictures({
    jpeg: await compiled('@jsquash/jpeg/codec/dec/mozjpeg_dec.wasm'),
    webp: await compiled('@jsquash/webp/codec/dec/webp_dec.wasm'),
    profiles: await WebAssembly.compile(await readFile(new URL('../src/core/image/lcms/lcms.wasm', import.meta.url))),
  });
  prepareFaces(new Uint8Array(await readFile(new URL('../src/core/image/faces/faces.bin', import.meta.url))));
}
