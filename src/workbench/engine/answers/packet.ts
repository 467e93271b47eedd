import { fingerprintOf } from '../../../core/job/index.ts';
import { makePacket, type PagePreview } from '../../../packet/index.ts';
import { fail, ProblemError } from '../../../core/problem.ts';
import { say } from '../../../words/one-language.ts';
import type { Work } from './room.ts';

export const packetAnswer: Work<'packet'> = async ({ page, ...wishes }, room, task) => {
  if (!room.last) fail('nothing-planned', say('where.packet'), say('engine.noJob'), say('engine.openOne'));
  const { job, plan } = room.last;
  const errors = plan.problems.filter((p) => p.severity === 'error');
  if (errors.length > 0) throw new ProblemError(errors);
  const bundle = { job, attachments: room.attachments };
  const pages: PagePreview[] = [];
  const files = await makePacket(bundle, plan, {
    ...wishes,
    fonts: await room.fonts,
    printer: { page, marginMm: 12 },
    onPage: (preview) => pages.push(preview),
    task,
  });
  return { answer: { files: files.map(({ path, bytes }) => ({ path, bytes })), pages, mark: fingerprintOf(bundle) }, transfer: [] };
};
