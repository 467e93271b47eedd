import type { Plan } from '../../../core/plan/index.ts';
import { fail } from '../../../core/problem.ts';
import { lengths, list, name as asName, say, share } from '../../../words/index.ts';
import { stockFile, type StockFormat } from '../../../packet/index.ts';
import { readFonts } from '../../assets.ts';
import type { Call } from '../../command.ts';
import { fileAt } from '../../disk/disk.ts';
import { placeOf } from '../../options.ts';
import { printJson, readerOnPaper, tellHere } from '../../reader.ts';
import { textOf } from '../../say/words.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';

/** Which file is asked for; pages of the printer's paper only as PDF. */
function formatOf(out: string, paper: string | undefined): StockFormat {
  if (paper !== undefined && paper !== 'a4' && paper !== 'letter')
    fail('no-such-paper', placeOf('--paper'), say('refusals.partsForPaper'), say('refusals.sayA4OrLetter'));
  const ending = /\.(svg|dxf|pdf)$/i.exec(out)?.[1].toLowerCase();
  if (ending === 'pdf') return paper ?? 'pdf';
  if (paper !== undefined) fail('no-such-format', fileAt(out), say('refusals.partsAsPdf'), say('refusals.endInPdf'));
  if (ending === 'svg' || ending === 'dxf') return ending;
  return fail('no-such-format', fileAt(out), say('refusals.stockAsSvgDxfPdf'), say('refusals.endInSvgDxfPdf'));
}

/** What can be refused before anything is worked out: no file for parts, a format that is not made, a file that is there already. */
export function checkStockFile({ options }: Call): void {
  const out = textOf(options['out']),
    paper = textOf(options['paper']);
  if (out === undefined) {
    if (paper !== undefined) fail('no-file-named', placeOf('--paper'), say('refusals.partsNeedFile'), say('refusals.sayOutPdf'));
    return;
  }
  formatOf(out, paper);
  mustBeNew(out, options['replace'] === true);
}

/** `laydown cut JOB --stock N`: a sheet of stock with the stencils that lie on it. */
export async function cutStock(plan: Plan, call: Call): Promise<number> {
  if (plan.stock.length === 0) fail('no-stock', say('where.job'), say('refusals.noStock'), say('refusals.giveStock'));
  const sheet = plan.stock.find((s) => String(s.number) === textOf(call.options['stock'])?.trim());
  if (!sheet) {
    const all = list(
      plan.stock.map((s) => s.number),
      'comma',
    );
    return fail(
      'no-such-stock',
      placeOf('--stock'),
      say('refusals.noSuchStock', { n: plan.stock.length, all }),
      say('refusals.giveItsNumber'),
    );
  }
  if (call.options['json']) {
    printJson(sheet);
    return 0;
  }
  const whole = say('answers.stockSheet', {
    n: sheet.number,
    material: asName(sheet.materialName),
    size: lengths([sheet.widthMm, sheet.heightMm]),
    stencils: sheet.placed.length,
    left: share(1 - sheet.usedShare, 0),
  });
  console.log(tellHere(sheet.times > 1 ? say('answers.stockSheetTimes', { sheet: whole, n: sheet.times }) : whole));
  for (const { number, layers, turned } of sheet.placed) {
    const runs = list(
      plan.layers.filter((l) => layers.includes(l.id)).map((l) => say('answers.run', { run: l.run, layer: asName(l.name) })),
    );
    const values = { n: number, runs };
    console.log(`  ${tellHere(turned ? say('answers.onStockTurned', values) : say('answers.onStock', values))}`);
  }
  const out = textOf(call.options['out']);
  if (out === undefined) return 0;
  const format = formatOf(out, textOf(call.options['paper'])),
    replace = call.options['replace'] === true;
  const bytes = await stockFile(plan, sheet, format, readFonts(), undefined, readerOnPaper(call.language, plan.job).language);
  writeNew(out, replace, () => bytes);
  console.log(`  ${out}`);
  return 0;
}
