import { readFileSync } from 'node:fs';
import { prepareReaders } from '../../bench/separate-tools.ts';
import { decodeDrawing, prepareDrawings, readDxf, readSvg } from '../../src/core/form/index.ts';
import { readReadings } from '../../src/core/ink/index.ts';
import { checkJob, parseJobText, readJobFile, writeJobText } from '../../src/core/job/index.ts';
import { plan, readyBundle, type Plan } from '../../src/core/plan/index.ts';
import { ProblemError } from '../../src/core/problem.ts';
import { readPicture } from '../../src/core/separate/index.ts';
import { withProfile, type Format } from './samples.ts';

/** The process that damaged files are fed to, one after the other. What ends it, or keeps it busy too long, is told by whoever started it. */
export interface ToFeed {
  readonly id: number;
  readonly kind: Format | 'job';
  readonly base64: string;
}
export interface Fed {
  readonly id: number;
  readonly outcome: 'refused' | 'read' | 'nonsense' | 'threw';
  readonly what: string;
  readonly ms: number;
  readonly megabytes: number;
}

await prepareReaders();
await prepareDrawings(readFileSync(new URL('../../node_modules/@resvg/resvg-wasm/index_bg.wasm', import.meta.url)));

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** Comes back where the file was read; what is wrong with what came of it, if anything. */
async function feed(kind: ToFeed['kind'], bytes: Uint8Array): Promise<string | null> {
  switch (kind) {
    case 'cgats':
    case 'cxf':
    case 'csv':
      return finite(readReadings(bytes, `x.${kind}`).patches.map((p) => p.reading));
    case 'svg':
      return finite(readSvg(decodeDrawing(bytes), 'x.svg').region.rings);
    case 'dxf':
      return finite(readDxf(decodeDrawing(bytes), 'x.dxf').region.rings);
    case 'laydown':
      return null === readJobFile(bytes, 'x.laydown').job ? 'no job' : null;
    case 'job':
      return plannedSense(text(bytes));
    default: {
      const picture = await readPicture(kind === 'icc' ? withProfile(bytes) : bytes, `x.${kind}`);
      return picture.pixels.data.length === picture.width * picture.height * 3 ? null : 'a picture of another size';
    }
  }
}

/** A job that is read must be whole: written and read again it is the same, and its plan holds no number that is none. */
async function plannedSense(source: string): Promise<string | null> {
  const job = parseJobText(source);
  const again = writeJobText(parseJobText(writeJobText(job)));
  if (again !== writeJobText(job)) return 'written and read again it is another';
  const bundle = { job, attachments: new Map<string, Uint8Array>() };
  const errors = checkJob(bundle).filter((p) => p.severity === 'error');
  if (errors.length > 0) throw new ProblemError(errors);
  const made: Plan = plan(await readyBundle(bundle));
  return finite([
    made.papers.map((p) => p.overlaps.map((o) => o.lab)),
    made.layers.map((l) => [l.stencil.knife.metres, l.stencil.knife.minutes]),
  ]);
}

function finite(value: unknown): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : 'a number that is none';
  if (ArrayBuffer.isView(value))
    return Array.from(value as unknown as ArrayLike<number>).every(Number.isFinite) ? null : 'a number that is none';
  if (typeof value !== 'object' || value === null) return null;
  for (const inner of Object.values(value)) {
    const wrong = finite(inner);
    if (wrong) return wrong;
  }
  return null;
}

process.on('message', async ({ id, kind, base64 }: ToFeed) => {
  const begun = performance.now();
  const answer = (outcome: Fed['outcome'], what = ''): void => {
    process.send?.({ id, outcome, what, ms: performance.now() - begun, megabytes: process.memoryUsage().rss / 1e6 } satisfies Fed);
  };
  try {
    const wrong = await feed(kind, new Uint8Array(Buffer.from(base64, 'base64')));
    answer(wrong ? 'nonsense' : 'read', wrong ?? '');
  } catch (error) {
    if (error instanceof ProblemError) answer('refused', error.problems[0].code);
    else answer('threw', error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
});
process.send?.('ready');
