import type { Job, JobLayer } from '../../../job/index.ts';
import { problem, type Problem } from '../../../problem.ts';
import { list, name as asName, say } from '../../../../words/say.ts';

/** Inks in use that nobody read: said once, with all their names. */
export function borrowedInks(job: Pick<Job, 'inks'>, layers: readonly Pick<JobLayer, 'ink'>[]): Problem[] {
  const partsOf = (id: string, depth: number): string[] => {
    const ink = job.inks.find((k) => k.id === id);
    return ink?.from === 'mix' && depth < 16 ? ink.parts.flatMap((part) => partsOf(part.ink, depth + 1)) : [id];
  };
  const used = new Set(layers.flatMap((l) => (l.ink === null ? [] : partsOf(l.ink, 0))));
  return (['published', 'by-eye'] as const).flatMap((known) => {
    const inks = job.inks.filter((ink) => ink.known === known && ink.from !== 'clear' && used.has(ink.id));
    if (inks.length === 0) return [];
    const values = {
      inks: list(
        inks.map((ink) => asName(ink.name)),
        'and',
      ),
      n: inks.length,
    };
    const says = known === 'published' ? say('ink.inksPublished', values) : say('ink.inksByEye', values);
    return [problem('note', 'ink-not-read', `inks[#${inks[0].id}]`, says, say('ink.readOwn'))];
  });
}
