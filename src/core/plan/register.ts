import type { Region } from '../form/index.ts';
import type { Job, JobLayer } from '../job/index.ts';
import { registerBudget, registerShifts, sigmaOf, stopsTemplate, type OffContact, type RegisterBudget, type RegisterDraws, type RegisterSigma, type StopsTemplate } from '../press/index.ts';
import { meetingOverlap, type Codes } from '../print/index.ts';
import { ProblemError, type Problem } from '../problem.ts';

/** How far off the layers will fall, and what the drawing forgives. */
export interface PlannedRegister {
  readonly sigma: RegisterSigma;
  readonly budget: RegisterBudget | null;
  /** 200 sheets with seeded misregister. `sheets[draws.worst[k]]` are among the worst twentieth. */
  readonly draws: RegisterDraws;
  /** The drawing with the stops, for each paper by id. */
  readonly stops: readonly { readonly paperId: string; readonly template: StopsTemplate }[];
  readonly problems: readonly Problem[];
}

const sheetsDrawn = 200;

export interface MeetingPair {
  readonly first: string;
  readonly second: string;
  readonly overlapMm: number;
}

/** How far each pair of layers overlaps where their shapes meet. */
export function meetingPairs(layers: readonly { readonly id: string; readonly bit: number; readonly prints: Region }[], codes: Codes): MeetingPair[] {
  const pairs: MeetingPair[] = [];
  const inside = (bit: number) => (x: number, y: number): boolean => {
    const px = Math.floor(x / codes.mmPerPx), py = Math.floor(y / codes.mmPerPx);
    return px >= 0 && py >= 0 && px < codes.width && py < codes.height && (codes.data[py * codes.width + px] & (1 << bit)) !== 0;
  };
  for (let a = 0; a < layers.length; a++) {
    for (let b = a + 1; b < layers.length; b++) {
      const overlapMm = meetingOverlap(layers[a].prints, layers[b].prints, inside(layers[b].bit));
      if (overlapMm !== null) pairs.push({ first: layers[a].id, second: layers[b].id, overlapMm });
    }
  }
  return pairs;
}

export function planRegister(job: Pick<Job, 'register' | 'papers' | 'image' | 'seed'>, layers: readonly JobLayer[], meeting: readonly MeetingPair[], stretch: OffContact | null, gapMm: number): PlannedRegister {
  const problems: Problem[] = [];
  const { method, sigmaMm, humidityPercent } = job.register;
  const imageMm = [job.image.widthMm, job.image.heightMm] as const;
  const edge = job.papers.some((p) => p.edge === 'torn') ? 'torn' as const : 'cut' as const;
  const sigma = sigmaOf(method, edge, sigmaMm);
  const attempt = <T>(work: () => T): T | null => {
    try {
      return work();
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      problems.push(...error.problems);
      return null;
    }
  };
  const stops = job.papers.flatMap((paper) => {
    const template = attempt(() => stopsTemplate({ sheetMm: [paper.widthMm, paper.heightMm], imageMm, imageAtMm: paper.imageAtMm, sheetThicknessMm: paper.thicknessMm, gapMm, edge: paper.edge }));
    if (!template) return [];
    problems.push(...template.problems);
    return [{ paperId: paper.id, template }];
  });
  const grains = new Set(job.papers.map((p) => p.grain));
  const budget = attempt(() => registerBudget({
    layers: layers.map((l) => ({ id: l.id, name: l.name, growthMm: stretch ? [stretch.alongMm, Math.max(...stretch.acrossMm)] as const : undefined })),
    method, edge, sigmaMm, imageMm, fromStopsMm: stops[0]?.template.fromStopsMm,
    grain: grains.size === 1 ? [...grains][0] : 'unknown', humidityPercent, forgives: meeting,
  }));
  if (budget) problems.push(...budget.problems);
  const draws = registerShifts(job.seed, sigma.sigmaMm, sheetsDrawn, { layers: Math.max(1, layers.length), imageMm });
  return { sigma, budget, draws, stops, problems };
}
