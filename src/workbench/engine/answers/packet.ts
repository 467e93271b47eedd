import { makePacket } from '../../../packet/index.ts';
import { fail, ProblemError } from '../../../core/problem.ts';
import { speechOf } from '../../words/core/speech.ts';
import type { Work } from './room.ts';

export const packetAnswer: Work<'packet'> = async ({ page, language = 'en' }, room, task) => {
  if (!room.last) fail('nothing-planned', 'the packet', 'There is no job on the bench.', 'Open one first.');
  const { job, plan } = room.last;
  const errors = plan.problems.filter((p) => p.severity === 'error');
  if (errors.length > 0) throw new ProblemError(errors);
  const files = await makePacket({ job, attachments: room.attachments }, plan, {
    fonts: await room.fonts,
    printer: { page, marginMm: 12 },
    speech: speechOf(language),
    language,
    task,
  });
  return { answer: files, transfer: [] };
};
