import { fingerprintOf, type JobBundle } from '../../core/job/index.ts';
import { linesToCut, type Plan, type PlannedStock } from '../../core/plan/index.ts';
import { quietTask, type Task } from '../../core/task.ts';
import type { Reader } from '../../words/index.ts';
import { flatDxf, flatSvg } from '../files/flat-sheet.ts';
import { flatPdf } from '../files/flat-pdf.ts';
import type { FontFiles } from '../pdf/book.ts';
import { printerPages, type Printer } from '../printer.ts';
import { layStock } from './stock-lines.ts';
import { stockTiles } from './stock-tiles.ts';
import { fileVoice } from '../voice.ts';

/** How a sheet of stock is written: for a machine, as one page of its own size, or in parts for a printer's paper. */
export type StockFormat = 'svg' | 'dxf' | 'pdf' | Printer['page'];

/**
 * One sheet of stock with its stencils side by side, as a file at true size; the PDF's page is the sheet, or (`a4`, `letter`) the printer's. Throws
 * `ProblemError` where a stencil on it does not hold.
 */
export async function stockFile(
  plan: Plan,
  sheet: PlannedStock,
  format: StockFormat,
  fonts: FontFiles,
  task: Task = quietTask,
  language: string = plan.job.language ?? 'en',
  attachments: JobBundle['attachments'] = new Map(),
): Promise<Uint8Array> {
  for (const { layerId } of sheet.placed) {
    const layer = plan.layers.find((l) => l.id === layerId);
    if (layer) linesToCut(layer);
  }
  const laid = layStock(plan, sheet);
  if (isPrinterPage(format)) {
    const reader: Reader = { language, units: plan.job.units };
    return stockTiles(plan, sheet, laid, {
      fonts,
      printer: { page: format, marginMm: 12 },
      reader,
      mark: fingerprintOf({ job: plan.job, attachments }),
      task,
    });
  }
  const voice = fileVoice(language);
  return format === 'pdf' ? flatPdf(laid, fonts, voice) : new TextEncoder().encode(format === 'svg' ? flatSvg(laid, voice) : flatDxf(laid));
}

const isPrinterPage = (format: StockFormat): format is Printer['page'] => printerPages.some((page) => page === format);
