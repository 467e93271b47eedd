import { parentPort } from 'node:worker_threads';
import { ProblemError, type Problem } from '../../core/problem.ts';
import { readPicture, type Picture } from '../../core/separate/index.ts';
import { preparePictureReaders } from '../assets.ts';

export interface ToRead {
  readonly bytes: Uint8Array;
  readonly file: string;
}
export type WasRead = { readonly picture: Picture } | { readonly problems: readonly Problem[] };

parentPort?.once('message', ({ bytes, file }: ToRead) => {
  // An error that nobody foresaw ends this thread, and reaches the one who asked.
  void preparePictureReaders()
    .then(() => readPicture(bytes, file))
    .then(
      (picture) => {
        const buffers = [picture.pixels.data, picture.coverage].flatMap((data) => (data ? [data.buffer as ArrayBuffer] : []));
        parentPort?.postMessage({ picture } satisfies WasRead, buffers);
      },
      (error: unknown) => {
        if (!(error instanceof ProblemError)) throw error;
        parentPort?.postMessage({ problems: error.problems } satisfies WasRead);
      },
    );
});
