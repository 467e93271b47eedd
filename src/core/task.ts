import type { Saying } from '../words/say.ts';

/** How long work tells how far it is and lets itself be stopped. Work calls `await task.pause()` a few times a second. */
export interface Task {
  /** `share` in 0..1; `note`: what is being done. */
  report(share: number, note?: Saying): void;
  /** Gives way to whatever else waits; throws `Cancelled` if the printmaker has stopped the work. */
  pause(): Promise<void>;
}

export class Cancelled extends Error {
  constructor() {
    super('Stopped.');
    this.name = 'Cancelled';
  }
}

/** For callers that neither watch nor stop. */
export const quietTask: Task = { report() {}, async pause() {} };
