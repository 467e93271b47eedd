import { fail, ProblemError } from '../../core/problem.ts';
import type { Picture } from '../../core/separate/index.ts';
import { say, type Saying } from '../../words/index.ts';
import { fileAt } from '../disk/disk.ts';
import type { ToRead, WasRead } from './picture-thread.ts';
import { startThread } from './thread.ts';

/** A hundred megapixels take a few seconds; a file that takes longer was made to. */
const mostMs = 60_000;
/** The thread's own memory; rooms for pixels come on top, and are bounded by the readers. */
const mostMegabytes = 1024;

/**
 * Reads a picture in a thread of its own, so that a file made to take all memory or for ever takes nothing else with it: the thread is ended, and
 * the file is named.
 */
export function readPictureApart(bytes: Uint8Array, file: string): Promise<Picture> {
  const thread = startThread('picture-thread', { maxOldGenerationSizeMb: mostMegabytes });
  return new Promise<Picture>((resolve, reject) => {
    const refuse = (code: string, message: Saying): void => {
      try {
        fail(code, fileAt(file), message, say('image.scaleDown'));
      } catch (error) {
        reject(error as Error);
      }
    };
    const timer = setTimeout(() => refuse('picture-too-long', say('image.tooLong')), mostMs);
    thread
      .once('message', (read: WasRead) => ('picture' in read ? resolve(read.picture) : reject(new ProblemError(read.problems))))
      .once('error', () => refuse('picture-too-large', say('image.tooMuchMemory')))
      .once('exit', () => {
        clearTimeout(timer);
        refuse('picture-too-large', say('image.tooMuchMemory'));
      });
    thread.postMessage({ bytes, file } satisfies ToRead);
  }).finally(() => void thread.terminate());
}
