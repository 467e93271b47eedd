import { gramsPerOunce } from '../../../units/index.ts';
import type { Plan } from '../../types.ts';
import { length, lengths, longLength, mass, name as asName, say, type Saying } from '../../../../words/say.ts';
import { materialsOf } from '../cut/stencils.ts';
import { tapeForJob } from './tape.ts';

/** Something to have in the studio before the work begins. */
export interface ToBuy {
  readonly what: Saying;
  /** How much, as it is bought. */
  readonly amount: Saying;
  /** What that is for, or how it is cut; nothing to say: left out. */
  readonly note?: Saying;
}

export interface BuyingGroup {
  readonly kind: 'papers' | 'inks' | 'stencils' | 'press';
  readonly lines: readonly ToBuy[];
}

type BuyingPlan = Pick<Plan, 'job' | 'layers' | 'cuts' | 'stock' | 'press' | 'edition'>;

/** Everything that the plan uses up, in the sizes it is bought in. Each count is the one that the other pages have. */
export function buyingList(plan: BuyingPlan): BuyingGroup[] {
  if (plan.layers.length === 0) return [];
  const groups: BuyingGroup[] = [
    { kind: 'papers', lines: papers(plan) },
    { kind: 'inks', lines: inks(plan) },
    { kind: 'stencils', lines: stencils(plan) },
    { kind: 'press', lines: press(plan) },
  ];
  return groups.filter((group) => group.lines.length > 0);
}

function papers(plan: BuyingPlan): ToBuy[] {
  return plan.job.papers.flatMap((paper) => {
    const sheets = plan.edition.sheetNames.filter((s) => s.paper === paper.id).length;
    if (sheets === 0) return [];
    const size = lengths([paper.widthMm, paper.heightMm]);
    const what = say('buying.paper', { paper: asName(paper.name), size });
    if (paper.printed) return [{ what, amount: say('buying.sheets', { n: sheets }), note: say('buying.printedAlready') }];
    const { parent } = paper;
    if (!parent) return [{ what, amount: say('buying.sheets', { n: sheets }), note: say('buying.cutToSize') }];
    const each = fromParent(paper, parent);
    const parentSize = lengths([parent.widthMm, parent.heightMm]);
    if (each === 0)
      return [{ what, amount: say('buying.sheets', { n: sheets }), note: say('buying.parentTooSmall', { size: parentSize }) }];
    return [
      {
        what,
        amount: say('buying.parents', { n: Math.ceil(sheets / each), size: parentSize }),
        note: say('buying.fromEach', { each, n: sheets }),
      },
    ];
  });
}

/**
 * Sheets out of a parent sheet by straight cuts through, all lying one way. Turned only where grain does not matter: `along` named
 * for the sheet is taken as the parent's.
 */
export function fromParent(
  sheet: { readonly widthMm: number; readonly heightMm: number; readonly grain?: string },
  parent: { readonly widthMm: number; readonly heightMm: number },
): number {
  const fits = (w: number, h: number): number => Math.floor(parent.widthMm / w + 1e-9) * Math.floor(parent.heightMm / h + 1e-9);
  const upright = fits(sheet.widthMm, sheet.heightMm);
  return sheet.grain === undefined || sheet.grain === 'unknown' ? Math.max(upright, fits(sheet.heightMm, sheet.widthMm)) : upright;
}

function inks(plan: BuyingPlan): ToBuy[] {
  const needs = new Map<string, { name: Saying; grams: number; runs: number[] }>();
  let retarder = 0;
  for (const layer of plan.layers) {
    retarder += layer.mix?.retarderGrams ?? 0;
    for (const part of layer.mix?.parts ?? []) {
      const key = part.inkId || JSON.stringify(part.name);
      const known = needs.get(key) ?? { name: part.name, grams: 0, runs: [] };
      known.grams += part.massGrams;
      known.runs.push(layer.run);
      needs.set(key, known);
    }
  }
  const lines = [...needs.values()].map(
    ({ name, grams, runs }): ToBuy => ({
      what: name,
      amount: say('buying.grams', { mass: whole(grams, plan) }),
      note: say('buying.forRuns', { n: runs.length, runs: { kind: 'list', items: runs, by: 'and' } }),
    }),
  );
  if (retarder > 0) lines.push({ what: say('buying.retarder'), amount: say('buying.grams', { mass: whole(retarder, plan) }) });
  const open = plan.layers.filter((l) => l.inkId === null);
  if (open.length > 0)
    lines.push({
      what: say('buying.openInk'),
      amount: say('buying.notKnown'),
      note: say('buying.forRuns', { n: open.length, runs: { kind: 'list', items: open.map((l) => l.run), by: 'and' } }),
    });
  return lines;
}

/** To the gram, or the tenth of an ounce, upwards: less would not do. */
const whole = (grams: number, { job }: BuyingPlan): ReturnType<typeof mass> => {
  const step = job.units === 'in' ? gramsPerOunce / 10 : 1;
  return mass(Math.ceil(grams / step - 1e-9) * step, job.units === 'in' ? 1 : 0);
};

function stencils(plan: BuyingPlan): ToBuy[] {
  const lines: ToBuy[] = [];
  for (const material of materialsOf(plan.job)) {
    const what = say('buying.material', { material: material.name, thickness: length(material.thicknessMm) });
    const laid = plan.stock.filter((sheet) => sheet.materialId === material.id);
    const cuts = plan.cuts.filter((cut) => cut.materialId === material.id);
    if (cuts.length === 0) continue;
    const count = cuts.reduce((sum, cut) => sum + cut.timesToCut, 0);
    if (laid.length > 0) {
      lines.push({
        what,
        amount: say('buying.parents', {
          n: laid.reduce((sum, sheet) => sum + sheet.times, 0),
          size: lengths([laid[0].widthMm, laid[0].heightMm]),
        }),
        note: say('buying.stencilsOnThem', { n: count }),
      });
      continue;
    }
    // Stencils may have sheets of their own size.
    const sizes = new Map<string, { readonly sizeMm: readonly [number, number]; n: number }>();
    for (const cut of cuts) {
      const box = plan.layers.find((l) => l.cutId === cut.id)?.stencil.sheet;
      if (!box || cut.timesToCut === 0) continue;
      const sizeMm = [box.maxX - box.minX, box.maxY - box.minY] as const;
      const known = sizes.get(String(sizeMm)) ?? { sizeMm, n: 0 };
      known.n += cut.timesToCut;
      sizes.set(String(sizeMm), known);
    }
    for (const { sizeMm, n } of sizes.values())
      lines.push({ what, amount: say('buying.parents', { n, size: lengths(sizeMm) }), note: say('buying.oneAStencil') });
  }
  return lines;
}

function press(plan: BuyingPlan): ToBuy[] {
  const { taping, risers } = plan.press;
  const runs = plan.layers.length;
  const lines: ToBuy[] = [];
  if (taping) {
    const metres = tapeForJob(plan);
    lines.push({
      what: say('buying.tape', { width: length(taping.tapeWidthMm) }),
      amount: say('buying.tapeLength', { length: longLength(Math.ceil(metres) * 1000, 0) }),
      note: say('buying.tapeFor', { runs }),
    });
  }
  for (const board of risers?.layers ?? []) {
    if (board.cardMm > 0)
      lines.push({
        what: say('buying.card', { thickness: length(board.cardMm) }),
        amount: say('buying.pieces', { n: 1 }),
        note: say('buying.boardFor'),
      });
    if (board.count === 0) continue;
    lines.push({
      what: say('buying.board', { thickness: length(board.thicknessMm) }),
      amount: say('buying.pieces', { n: board.count }),
      note: say('buying.boardFor'),
    });
  }
  const setUp = plan.edition.sheets?.setUp;
  const perRun = setUp?.perRun ?? plan.job.edition.setUpSheets;
  const newsprint = setUp?.newsprint ?? perRun;
  if (newsprint > 0)
    lines.push({
      what: say('buying.newsprint'),
      amount: say('buying.sheets', { n: newsprint * runs }),
      note: say('buying.eachRun', { n: newsprint }),
    });
  // Those of the set-up, and those that check the register after a change of stencil.
  const offcuts = plan.edition.setUpOfRun.reduce((sum, n) => sum + n - newsprint, 0);
  if (offcuts > 0)
    lines.push({
      what: say('buying.offcuts'),
      amount: say('buying.sheets', { n: offcuts }),
      note: say('buying.eachRunKept', { n: perRun - newsprint }),
    });
  return lines;
}

/** Words for the group's head. */
export const buyingHeads = {
  papers: say('buying.papers'),
  inks: say('buying.inks'),
  stencils: say('buying.stencils'),
  press: say('buying.press'),
} as const satisfies Record<BuyingGroup['kind'], Saying>;
