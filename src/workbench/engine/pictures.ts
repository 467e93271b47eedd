import jpegUrl from '@jsquash/jpeg/codec/dec/mozjpeg_dec.wasm?url';
import webpUrl from '@jsquash/webp/codec/dec/webp_dec.wasm?url';
import profilesUrl from 'lcms-wasm/dist/lcms.wasm?url';
import { preparePictures } from '../../core/separate/index.ts';

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
  const compiled = async (url: string): Promise<WebAssembly.Module> => {
    const response = await fetch(url);
    if (!response.ok) throw new Error(`A part of Laydown is missing (${response.status}). Load the page again.`);
    return WebAssembly.compile(await response.arrayBuffer());
  };
  const [jpeg, webp, profiles] = await Promise.all([jpegUrl, webpUrl, profilesUrl].map(compiled));
  await preparePictures({ jpeg, webp, profiles });
}
