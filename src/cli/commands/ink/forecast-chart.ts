import { askTones, readChart } from '../../../core/asks/index.ts';
import type { Plan } from '../../../core/plan/index.ts';
import { fail } from '../../../core/problem.ts';
import { deltaE, figure, name as asName, say } from '../../../words/index.ts';
import { readFileBytes } from '../../disk/disk.ts';
import { printProblems } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { idsOf, labCells, labColumns } from '../../say/words.ts';

/** `forecast --coverages`: the fields of a chart on one paper. */
export function forecastChart(plan: Plan, file: string, paperId: string | undefined, json: boolean): number {
  const paper = plan.papers.find((p) => paperId === undefined || p.id === paperId);
  if (!paper && paperId !== undefined)
    fail(
      'no-such-paper',
      placeOf('--paper'),
      say('asks.noSuchPaper', { paper: asName(paperId) }),
      say('cli.useOneOf', { all: idsOf(plan.papers, 'or') }),
    );
  const chart = readChart(new TextDecoder().decode(readFileBytes(file)), file, plan);
  printProblems(chart.problems);
  const fields = paper && askTones(paper, chart);
  const tones = paper?.tones;
  if (!fields || !tones) fail('no-tone', placeOf('--coverages'), say('halftone.noTone'), say('halftone.giveTone'));
  if (json) {
    const { n, known, wedgeOff } = tones.model;
    const wedges = Object.fromEntries(tones.layers.flatMap((id, i) => (tones.carries[i] ? [[id, known[i]]] : [])));
    printJson({
      paper: paper.id,
      n: Number(n.toFixed(3)),
      wedgeOff,
      wedges,
      rows: fields.map(({ covers, ...field }) => ({ ...field, coverages: covers })),
    });
    return 0;
  }
  console.log(paper.name);
  const named = fields.some((f) => f.name !== undefined);
  const rows = fields.map(({ name, covers, srgb, inGamut, lab, band }, i) => [
    named ? (name ?? String(i + 1)) : String(i + 1),
    `${srgb}${inGamut ? ' ' : '*'}`,
    ...labCells(lab),
    sayHere('answers.within', { band: deltaE(band) }),
    Object.entries(covers)
      .filter(([, c]) => c > 0)
      .map(([id, c]) => `${id} ${Math.round(c * 100)} %`)
      .join(' + ') || sayHere('answers.barePaper'),
  ]);
  for (const line of columns(rows, { indent: '  ', right: [...labColumns(2)] })) console.log(line);
  console.log(`  ${sayHere('halftone.isN', { n: figure(tones.model.n, 2) })}`);
  const blind = tones.layers.filter((_, i) => tones.carries[i] && !tones.model.known[i]).map((id) => asName(id));
  if (blind.length > 0) console.log(`  ${sayHere('halftone.noWedge', { layers: { kind: 'list', items: blind, by: 'and' } })}`);
  if (fields.some((f) => !f.inGamut)) console.log(`\n${sayHere('answers.outsideScreen')}`);
  return 0;
}
