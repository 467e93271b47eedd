import type { Plan } from '../core/plan/index.ts';
import { fail } from '../core/problem.ts';
import { saySize } from '../core/units/index.ts';
import { stockFile, type StockFormat } from '../packet/index.ts';
import { readFonts } from './assets.ts';
import type { Call } from './command.ts';
import { plural, textOf } from './words.ts';
import { mustBeNew, writeNew } from './write-new.ts';

/** Which file is asked for; pages of the printer's paper only as PDF. */
function formatOf(out: string, paper: string | undefined): StockFormat {
  if (paper !== undefined && paper !== 'a4' && paper !== 'letter')
    fail('no-such-paper', paper, 'Parts are made for A4 or Letter.', 'Say --paper a4 or --paper letter.');
  const ending = /\.(svg|dxf|pdf)$/i.exec(out)?.[1].toLowerCase();
  if (ending === 'pdf') return paper ?? 'pdf';
  if (paper !== undefined) fail('no-such-format', out, 'Parts to join are written as PDF.', 'End the file’s name in .pdf.');
  if (ending === 'svg' || ending === 'dxf') return ending;
  return fail('no-such-format', out, 'A sheet of stock is written as SVG, DXF or PDF.', 'End the file’s name in .svg, .dxf or .pdf.');
}

/** What can be refused before anything is worked out: no file for parts, a format that is not made, a file that is there already. */
export function checkStockFile({ options }: Call): void {
  const out = textOf(options['out']),
    paper = textOf(options['paper']);
  if (out === undefined) {
    if (paper !== undefined) fail('no-file-named', '--paper', 'Parts to join need a file to go into.', 'Say --out NAME.pdf.');
    return;
  }
  formatOf(out, paper);
  mustBeNew(out, options['replace'] === true);
}

/** `laydown cut JOB --stock N`: a sheet of stock with the stencils that lie on it. */
export async function cutStock(plan: Plan, call: Call): Promise<number> {
  if (plan.stock.length === 0)
    fail(
      'no-stock',
      'the job',
      'It names no sheets that stencils could be laid on side by side.',
      'Give a material its “stock” in the job: the size it is bought in.',
    );
  const sheet = plan.stock.find((s) => String(s.number) === textOf(call.options['stock'])?.trim());
  if (!sheet)
    return fail(
      'no-such-stock',
      '--stock',
      `There is no such sheet; there ${plan.stock.length === 1 ? 'is sheet' : 'are sheets'} ${plan.stock.map((s) => s.number).join(', ')}.`,
      'Give its number.',
    );
  if (call.options['json']) {
    console.log(JSON.stringify(sheet, null, 2));
    return 0;
  }
  console.log(
    `Sheet ${sheet.number} of ${sheet.materialName}, ${saySize(sheet.widthMm, sheet.heightMm, plan.job.units)}: ${plural(sheet.placed.length, 'stencil')}, ${Math.round(100 * (1 - sheet.usedShare))} % left over${sheet.times > 1 ? `; cut ${sheet.times} like it` : ''}`,
  );
  for (const placed of sheet.placed)
    console.log(
      `  ${placed.number}: ${plan.layers
        .filter((l) => placed.layers.includes(l.id))
        .map((l) => `run ${l.run}, ${l.name}`)
        .join(' and ')}${placed.turned ? '; turned, its top to the right' : ''}`,
    );
  const out = textOf(call.options['out']);
  if (out === undefined) return 0;
  const format = formatOf(out, textOf(call.options['paper'])),
    replace = call.options['replace'] === true;
  const bytes = await stockFile(plan, sheet, format, readFonts());
  writeNew(out, replace, () => bytes);
  console.log(`  ${out}`);
  return 0;
}
