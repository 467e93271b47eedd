import { makePacket } from '../../../packet/index.ts';
import { fail, ProblemError } from '../../../core/problem.ts';
import { say } from '../../../words/index.ts';
import type { Work } from './room.ts';

export const packetAnswer: Work<'packet'> = async ({ page, language }, room, task) => {
  if (!room.last) fail('nothing-planned', say('where.packet'), say('engine.noJob'), say('engine.openOne'));
  const { job, plan } = room.last;
  const errors = plan.problems.filter((p) => p.severity === 'error');
  if (errors.length > 0) throw new ProblemError(errors);
  const files = await makePacket({ job, attachments: room.attachments }, plan, {
    fonts: await room.fonts,
    printer: { page, marginMm: 12 },
    language,
    task,
  });
  return { answer: files.map(({ path, bytes }) => ({ path, bytes })), transfer: [] };
};
