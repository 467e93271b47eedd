import { overlapColours, overlapSpectra } from '../src/core/ink/index.ts';
import { createPlanner, plan, readyBundle, type PlanInput } from '../src/core/plan/index.ts';
import { codeAreas, paint } from '../src/core/print/index.ts';
import { prepare, readFonts } from '../src/cli/assets.ts';
import { readJobAt } from '../src/cli/disk/folder.ts';
import { makePacket } from '../src/packet/index.ts';
import { filmOf } from '../src/core/ink/index.ts';
import { medianMs, type BenchRow } from './row.ts';

export const title = 'The whole way: tide-pool, 180 × 240 mm, six runs, three papers';

export async function run(): Promise<BenchRow[]> {
  await prepare();
  const bundle = await readyBundle(readJobAt(new URL('../examples/tide-pool', import.meta.url).pathname));
  const made = plan(bundle);
  const rows: BenchRow[] = [];

  const films = Array.from({ length: 8 }, (_, i) => filmOf(made.inks[i % 5], 0.3 + 0.08 * i));
  const papers = Array.from({ length: 4 }, (_, i) => new Float64Array(36).fill(0.95 - 0.03 * i));
  const surface = { ks: 0.01, k1: 0.04, k2: 0.6 };
  rows.push({
    name: 'all overlaps of 8 layers × 4 papers: spectra, Lab, sRGB (1,024)',
    medianMs: await medianMs(() => papers.map((paper) => overlapColours(overlapSpectra(paper, films, surface)))),
  });

  const out = new Uint32Array(made.codes.data.length),
    copy = new Uint32Array(out.length);
  paint(made.codes, made.papers[0].palette, out);
  const copyMs = await medianMs(() => copy.set(out));
  rows.push({
    name: `recolour of the proof at 300 ppi (${(out.length / 1e6).toFixed(1)} Mpx)`,
    medianMs: await medianMs(() => paint(made.codes, made.papers[0].palette, out)),
    rivalName: 'copy of the same buffer',
    rivalMs: copyMs,
    note: 'aim: ratio ≤ 3',
  });
  rows.push({
    name: 'areas of all overlaps at 300 ppi',
    medianMs: await medianMs(() => codeAreas(made.codes)),
    rivalName: 'copy',
    rivalMs: copyMs,
  });

  const cold = await medianMs(() => plan(bundle), { least: 3, budgetMs: 4000 });
  rows.push({ name: 'plan() cold', medianMs: cold });
  const after = async (name: string, change: (step: number) => PlanInput): Promise<void> => {
    const planner = createPlanner();
    planner.plan(bundle);
    let step = 0;
    rows.push({
      name: `plan() after ${name}`,
      medianMs: await medianMs(() => planner.plan(change(++step)), { least: 5, most: 12, budgetMs: 4000 }),
      rivalName: 'plan() cold',
      rivalMs: cold,
    });
  };
  const { job } = bundle;
  await after('a strength change', (step) => ({
    ...bundle,
    job: { ...job, layers: job.layers.map((l, i) => (i === 3 ? { ...l, strength: 0.5 + 0.01 * step } : l)) },
  }));
  await after('a new order', (step) => ({
    ...bundle,
    job: { ...job, layers: [...job.layers.slice((step % 5) + 1), ...job.layers.slice(0, (step % 5) + 1)] },
  }));
  await after('moving a form', (step) => ({
    ...bundle,
    job: {
      ...job,
      cuts: job.cuts.map((c) => (c.id === 'urchin' ? { ...c, parts: c.parts.map((p) => ({ ...p, xMm: p.xMm + 0.5 * step })) } : c)),
    },
  }));

  const fonts = readFonts();
  const packetMs = await medianMs(() => makePacket(bundle, made, { fonts, printer: { page: 'a4', marginMm: 12 } }), {
    least: 3,
    budgetMs: 6000,
  });
  rows.push({ name: 'packet: every file', medianMs: packetMs });
  return rows;
}
