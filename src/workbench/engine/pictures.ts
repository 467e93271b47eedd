import jpegUrl from '@jsquash/jpeg/codec/dec/mozjpeg_dec.wasm?url';
import webpUrl from '@jsquash/webp/codec/dec/webp_dec.wasm?url';
import facesUrl from '../../core/image/faces/faces.bin?url';
import profilesUrl from '../../core/image/lcms/lcms.wasm?url';
import { prepareFaces, preparePictures } from '../../core/separate/index.ts';
import { fetchPart } from './fetch-part.ts';

let ready: Promise<void> | undefined;

/** What reads pictures, loaded once per worker. Begun when the worker starts, so that nothing is asked for later. */
export function picturesReady(): Promise<void> {
  if (!ready) {
    ready = load();
    ready.catch(() => undefined);
  }
  return ready;
}

async function load(): Promise<void> {
  const compiled = async (url: string): Promise<WebAssembly.Module> => WebAssembly.compile(await fetchPart(url));
  const [[jpeg, webp, profiles], faces] = await Promise.all([
    Promise.all([jpegUrl, webpUrl, profilesUrl].map(compiled)),
    fetchPart(facesUrl),
  ]);
  await preparePictures({ jpeg, webp, profiles });
  prepareFaces(faces);
}
