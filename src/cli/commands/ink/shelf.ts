import { existsSync } from 'node:fs';
import {
  defaultSurface,
  inkCurves,
  inkOfLot,
  mergeShelves,
  readShelf,
  spectrumFromReading,
  starterShelf,
  writeShelf,
  type InkShelf,
} from '../../../core/ink/index.ts';
import { shelfWithJob } from '../../../core/asks/index.ts';
import { fail, ProblemError, type Problem } from '../../../core/problem.ts';
import { figure, name as asName, say, type Saying } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { readFileBytes } from '../../disk/disk.ts';
import { json, option, replaceFile } from '../../say/help.ts';
import { printProblems, takeJob } from '../../disk/load.ts';
import { printJson, problemHere, sayHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { labCells, labColumns, textOf } from '../../say/words.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';

export const shelf: Command = {
  name: 'shelf',
  usage: say('help.shelfUsage'),
  summary: say('help.shelfSummary'),
  help: [
    say('help.shelfText'),
    option('--starter', say('help.shelfStarter')),
    option('--from', say('help.shelfFrom'), 'job'),
    option('--out', say('help.shelfOut'), 'file'),
    replaceFile,
    json,
  ],
  options: {
    starter: { type: 'boolean' },
    from: { type: 'string' },
    out: { type: 'string' },
    replace: { type: 'boolean' },
    json: { type: 'boolean' },
  },
  run(call) {
    const job = textOf(call.options['from']);
    const starter = call.options['starter'] === true;
    if (call.words.length === 0 && job === undefined && !starter)
      fail('no-file', say('where.commandLine'), say('refusals.whichShelf'), say('refusals.nameShelf'));
    const out = textOf(call.options['out']),
      replace = call.options['replace'] === true;
    if (out !== undefined) mustBeNew(out, replace);
    const problems: Problem[] = [];
    let whole: InkShelf | null = starter ? starterShelf(tellHere) : null;
    for (const path of call.words) {
      if ((job !== undefined || starter) && !existsSync(path)) continue;
      const read = readShelf(new TextDecoder().decode(readFileBytes(path)), path);
      if (!whole) whole = read;
      else {
        const merged = mergeShelves(whole, read);
        problems.push(...merged.problems);
        whole = merged.shelf;
      }
    }
    if (job !== undefined) {
      const put = shelfWithJob(whole, takeJob(job).job);
      problems.push(...put.problems);
      whole = put.shelf;
    }
    printProblems(problems);
    if (out !== undefined) writeNew(out, replace, () => writeShelf(whole!));
    if (call.options['json']) printJson(whole);
    else for (const line of sayShelf(whole!)) console.log(line);
    if (out !== undefined) console.error(sayHere('cli.written', { file: asName(out) }));
    return 0;
  },
};

const roles = {
  'transparent-base': say('inkAnswers.transparentBase'),
  'extender-base': say('inkAnswers.extenderBase'),
  retarder: say('inkAnswers.retarderRole'),
};
const sources = {
  'one-ground': say('inkAnswers.oneGround'),
  'two-grounds': say('inkAnswers.twoGrounds'),
  ladder: say('inkAnswers.ladder'),
  clear: say('inkAnswers.clear'),
};

type ShelfInk = InkShelf['inks'][number];

/** Inks with their lots, papers, pots. */
function sayShelf(shelf: InkShelf): string[] {
  const inks = shelf.inks.map((ink) => [ink.id, sayInk(ink)] as const);
  const papers = shelf.papers.map((p) => [p.id, say('inkAnswers.paperOnShelf', { paper: asName(p.name) })] as const);
  const pots = shelf.pots.map((p) => [p.id, say('inkAnswers.potOnShelf', { pot: asName(p.name), n: p.rounds.length })] as const);
  const heads = columns([...inks, ...papers, ...pots].map(([id, what]) => [id, tellHere(what)]));
  const lots = sayLots(shelf);
  return [
    ...shelf.inks.flatMap((_, i) => [heads[i], ...lots[i]]),
    ...heads.slice(inks.length),
    sayHere('inkAnswers.shelfHas', { inks: inks.length, papers: papers.length, pots: pots.length }),
  ];
}

function sayInk({ name, role, densityGPerMl }: ShelfInk): Saying {
  const values = { ink: asName(name), density: figure(densityGPerMl, 3, false) };
  return role === 'ink' ? say('inkAnswers.inkOnShelf', values) : say('inkAnswers.baseOnShelf', { ...values, role: roles[role] });
}

/** For each ink its lots as they read on the shelf's first paper, and how far each is to be trusted; problems under the lot. */
function sayLots({ papers: [first], inks }: InkShelf): string[][] {
  const paper = first
    ? spectrumFromReading(first.reading, say('where.paperOnShelf', { paper: asName(first.name) }))
    : new Float64Array(36).fill(0.9);
  const surface = defaultSurface([], false);
  const rows: string[][] = [];
  const under = inks.map((ink) =>
    ink.lots.map((lot) => {
      const row = [tellHere(say('inkAnswers.lotNo', { lot: asName(lot.lot) })), tellHere(sources[lot.source.from])];
      const known = lot.known && say(lot.known === 'published' ? 'ink.trustPublished' : 'ink.trustByEye');
      rows.push(row);
      try {
        const found = inkOfLot(lot, surface, ink.name);
        row.push(...labCells(inkCurves(found.ink, paper, surface, [1]).strengths[0].lab), tellHere(known ?? found.trust.words));
        return { at: rows.length - 1, problems: found.problems };
      } catch (error) {
        if (!(error instanceof ProblemError)) throw error;
        return { at: rows.length - 1, problems: error.problems };
      }
    }),
  );
  const lines = columns(rows, { indent: '  ', right: labColumns(2) });
  return under.map((lots) => lots.flatMap(({ at, problems }) => [lines[at], ...problems.map((p) => `    ${problemHere(p)}`)]));
}
