import { fail } from '../../../../core/problem.ts';
import { stockFile } from '../../../../packet/index.ts';
import { stockFileName } from '../../../../core/job/index.ts';
import { say } from '../../../../words/one-language.ts';
import type { Work } from '../room.ts';

/** One sheet of stock with the stencils that lie on it, as a file at true size. */
export const stockFileAnswer: Work<'stockFile'> = async ({ number, format, language }, room, task) => {
  const plan = room.last?.plan;
  const sheet = plan?.stock.find((s) => s.number === number);
  if (!plan || !sheet) fail('no-such-stock', say('where.workbench'), say('engine.stockNotPlanned'), say('engine.waitAndTry'));
  const bytes = await stockFile(plan, sheet, format, await room.fonts, task, language, room.attachments);
  return { answer: { path: stockFileName(plan.job.title, sheet.materialName, number, format), bytes }, transfer: [] };
};
