import type { Plan } from '../../../core/plan/index.ts';
import { calledPerInch } from '../../../core/press/index.ts';
import { figure, film, length, lengths, list, name as asName, say, share, type Saying } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { option } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { printJson, readerHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';

export const press: Command = {
  name: 'press',
  usage: say('help.pressUsage'),
  summary: say('help.pressSummary'),
  help: [say('help.pressText'), option('--json', say('help.pressJson'))],
  options: { json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    const { press: p, register: r } = plan;
    if (call.options['json']) {
      printJson({ press: p, register: { ...r, draws: { medianMm: r.draws.medianMm, p95Mm: r.draws.p95Mm } } });
      return 0;
    }
    const groups: readonly (readonly [Saying, readonly (Saying | null)[]])[] = [
      [say('answers.mesh'), [sayMesh(plan), ...sayRunMeshes(plan)]],
      [say('answers.film'), [sayFilm(plan)]],
      [say('answers.fit'), sayFit(plan)],
      [say('answers.squeegee'), [saySqueegee(plan), ...(p.fit?.remedies ?? []).map((remedy) => remedy.text)]],
      [say('answers.gap'), [say('answers.gapIs', { gap: length(p.gapMm), why: p.gap.why })]],
      [say('answers.growth'), [sayGrowth(plan), ...sayRunGaps(plan)]],
      [say('answers.risers'), sayRisers(plan)],
      [say('answers.register'), sayRegister(plan)],
    ];
    const rows = groups.flatMap(([head, lines]) =>
      lines.filter((line) => line !== null).map((line, i) => [i === 0 ? tellHere(head) : '', tellHere(line)]),
    );
    for (const line of columns(rows, { between: '   ' })) console.log(line);
    for (const line of columns(sayPairs(plan), { indent: '  ' })) console.log(line);
    const said = [...p.problems, ...r.problems];
    printProblems(said, console.log);
    return said.some((one) => one.severity === 'error') ? 1 : 0;
  },
};

function sayMesh({ press: { deposit, screenKnown } }: Plan): Saying {
  const { mesh } = deposit;
  const values = {
    perInch: figure(calledPerInch(mesh)),
    thread: film(mesh.threadMicrons),
    opening: film(mesh.openingMicrons, readerHere().units === 'in' ? 1 : 0),
    open: share(mesh.openPercent / 100, 0),
  };
  const said =
    readerHere().units === 'in'
      ? say('answers.meshPerInch', values)
      : say('answers.meshPerCm', { perCm: figure(mesh.perCm, 1, false), ...values });
  return screenKnown ? said : say('answers.usualMesh', { mesh: said });
}

function sayFilm({ press: { deposit } }: Plan): Saying {
  const digits = readerHere().units === 'in' ? 1 : 0;
  return say('answers.filmIs', {
    wet: film(deposit.wetMicrons, digits),
    low: film(deposit.wetRange[0], digits),
    high: film(deposit.wetRange[1], digits),
    dry: film(deposit.dryMicrons, digits),
  });
}

const sides = { top: say('answers.top'), bottom: say('answers.bottom'), left: say('answers.left'), right: say('answers.right') };

function sayFit({ press: { fit } }: Plan): Saying[] {
  if (!fit) return [];
  const margins = list(
    fit.margins.map(({ side, mm, missingMm }) =>
      missingMm > 0
        ? say('answers.marginShort', { side: sides[side], room: length(mm), missing: length(missingMm) })
        : say('answers.margin', { side: sides[side], room: length(mm) }),
    ),
    'comma',
  );
  return [say(fit.verdict === 'holds' ? 'answers.fitHolds' : fit.verdict === 'tight' ? 'answers.fitTight' : 'answers.fitNo', { margins })];
}

function saySqueegee({ press: { fit } }: Plan): Saying | null {
  return (
    fit &&
    say('answers.squeegeeIs', { range: lengths([fit.squeegee.leastMm, fit.squeegee.mostMm], 'to'), best: length(fit.squeegee.bestMm) })
  );
}

function sayGrowth({ press: { offContact } }: Plan): Saying | null {
  return (
    offContact &&
    say('answers.growthIs', { along: length(offContact.alongMm, 2), across: lengths([...new Set(offContact.acrossMm)], 'to', 2) })
  );
}

/** Runs with a mesh of their own. */
function sayRunMeshes({ press: { runs }, layers }: Plan): Saying[] {
  return runs
    .filter((one) => one.own)
    .map(({ layerId, name, deposit }) => {
      const layer = layers.find((l) => l.id === layerId);
      const run = say('answers.run', { run: layer?.run ?? 0, layer: asName(layer?.name ?? layerId) });
      return say('answers.runMesh', { run, mesh: asName(name), film: film(deposit.wetMicrons, readerHere().units === 'in' ? 1 : 0) });
    });
}

/** Runs with a gap of their own. */
function sayRunGaps({ press: { gaps }, layers }: Plan): Saying[] {
  return gaps
    .filter((one) => one.own)
    .map(({ layerId, gapMm, growth, risers }) => {
      const layer = layers.find((l) => l.id === layerId);
      const more = [
        ...(growth ? [say('answers.runGrows', { along: length(growth.alongMm, 2), across: length(Math.max(...growth.acrossMm), 2) })] : []),
        ...(risers ? [say('answers.runRisers', { height: length(risers.heightMm), front: length(risers.built.frontMm) })] : []),
      ];
      const run = say('answers.run', { run: layer?.run ?? 0, layer: asName(layer?.name ?? layerId) });
      return say('answers.runGap', { run, gap: length(gapMm), more: more.length > 0 ? list(more, 'semicolon') : undefined });
    });
}

function sayRisers({ press: { risers } }: Plan): Saying[] {
  if (!risers) return [];
  const more = [
    ...(risers.built.underHingeMm > 0.05 ? [say('answers.underHinge', { by: length(risers.built.underHingeMm) })] : []),
    ...(risers.built.underPaperMm > 0.05 ? [say('answers.underPaper', { by: length(risers.built.underPaperMm) })] : []),
  ];
  return [
    say('answers.risersAre', {
      height: length(risers.heightMm),
      front: length(risers.built.frontMm),
      more: more.length > 0 ? list(more, 'comma') : undefined,
    }),
    ...risers.layers.map((l) =>
      say('answers.boards', {
        n: l.count,
        one: length(l.thicknessMm),
        total: length(l.heightMm),
        ...(l.cardMm > 0 ? { card: length(l.cardMm) } : {}),
      }),
    ),
  ];
}

function sayRegister({ register: { sigma, tested, draws } }: Plan): Saying[] {
  const found = tested?.found && { sigma: length(tested.found.sigmaMm.both, 2) };
  return [
    sigma.text,
    ...(found ? [tested.taken ? say('answers.tested', found) : say('answers.testedNotUsed', found)] : []),
    say('answers.sheetsWithin', { half: length(draws.medianMm, 2), most: length(draws.p95Mm, 2) }),
  ];
}

const verdicts = { holds: say('answers.holds'), tight: say('answers.tight'), opens: say('answers.opens'), unknown: say('answers.unknown') };

/** What the drawing forgives, pair by pair. */
function sayPairs({ register: { budget }, layers }: Plan): string[][] {
  const nameOf = (id: string): ReturnType<typeof asName> => asName(layers.find((l) => l.id === id)?.name ?? id);
  return (budget?.pairs ?? []).flatMap(({ first, second, likelyMm, worstMm, forgivesMm, verdict }) =>
    forgivesMm === null
      ? []
      : [
          [
            say('answers.pair', { first: nameOf(first), second: nameOf(second) }),
            say('answers.pairLikely', { likely: length(likelyMm, 1), worst: length(worstMm, 1) }),
            say('answers.pairForgives', { forgives: length(forgivesMm, 1), verdict: verdicts[verdict] }),
          ].map((one) => tellHere(one)),
        ],
  );
}
