import { fail } from '../../../core/problem.ts';
import { stockFile } from '../../../packet/index.ts';
import { stockFileName } from '../../../core/job/file-names.ts';
import { speechOf } from '../../words/core/speech.ts';
import type { Work } from './room.ts';

/** One sheet of stock with the stencils that lie on it, as a file at true size. */
export const stockFileAnswer: Work<'stockFile'> = async ({ number, format, language = 'en' }, room, task) => {
  const plan = room.last?.plan;
  const sheet = plan?.stock.find((s) => s.number === number);
  if (!plan || !sheet) fail('no-such-stock', 'stock', 'This sheet of stock is not planned yet.', 'Wait a moment and try again.');
  const bytes = await stockFile(plan, sheet, format, await room.fonts, task, speechOf(language));
  return { answer: { path: stockFileName(plan.job.title, sheet.materialName, number, format), bytes, what: format }, transfer: [] };
};
