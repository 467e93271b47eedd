import { logLine, type CountEvent } from '../../src/core/edition/index.ts';
import type { JobBundle } from '../../src/core/job/index.ts';
import { plainPool } from './bench-page.ts';

/** Tide-pool with its whole edition pulled: A3 smeared in the third run, B2 noted. */
export function pulled(): JobBundle {
  const bundle = plainPool();
  const names = [
    ...Array.from({ length: 16 }, (_, i) => `A${i + 1}`),
    ...Array.from({ length: 8 }, (_, i) => `B${i + 1}`),
    ...Array.from({ length: 4 }, (_, i) => `C${i + 1}`),
  ];
  const events: CountEvent[] = [];
  bundle.job.layers.forEach((layer, run) => {
    for (const sheet of names) {
      if (sheet === 'A3' && run >= 2) {
        if (run === 2) events.push({ kind: 'spoil', run: layer.id, sheet, at: '2026-05-01T10:00:00Z', fault: 'smeared' });
        continue;
      }
      events.push({ kind: 'pull', run: layer.id, sheet, at: '2026-05-01T10:00:00Z' });
    }
  });
  events.push({ kind: 'note', run: 'urchin', sheet: 'B2', at: '2026-05-01T10:00:00Z', text: 'a little thin' });
  const log = events.map((event, i) => logLine(i + 1, event)).join('');
  return { ...bundle, attachments: new Map([...bundle.attachments, ['press-count.log', new TextEncoder().encode(log)]]) };
}
