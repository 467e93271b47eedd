import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import type { DrawingJudged } from '../../test/corpus.ts';

/** What came of one drawing; `begun` alone where the process ended before it did. */
export interface Line {
  readonly name: string;
  readonly path: string;
  readonly begun?: true;
  readonly judged?: DrawingJudged;
  readonly crash?: string;
}

/** A file of one line a drawing, so that a long run can be made in short ones: what is there already is not judged again. */
export class Record {
  readonly lines = new Map<string, Line>();
  private readonly file: string | undefined;

  constructor(file: string | undefined) {
    this.file = file;
    if (!file || !existsSync(file)) return;
    for (const text of readFileSync(file, 'utf8').split('\n')) {
      if (!text) continue;
      const line = JSON.parse(text) as Line;
      this.lines.set(line.path, line);
    }
  }

  add(line: Line): void {
    this.lines.set(line.path, line);
    if (this.file) appendFileSync(this.file, `${JSON.stringify(line)}\n`);
  }
}
