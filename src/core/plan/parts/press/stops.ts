import type { Job, JobPaper } from '../../../job/index.ts';
import { stopsTemplate, type StopsTemplate } from '../../../press/index.ts';
import { problem, ProblemError, type Problem } from '../../../problem.ts';
import { lengths, list, name as asName, say } from '../../../../words/say.ts';

/** Papers that lie against the same three stops. */
export interface StopSetting {
  /** 1, 2, … */
  readonly number: number;
  readonly paperIds: readonly string[];
  /** From the stops' corner to the image, across and up: the same for every paper of the setting. */
  readonly imageFromCornerMm: readonly [number, number];
  /** Of the thickest sheet: it decides how thick the stops are. */
  readonly thicknessMm: readonly [number, number];
}

export interface PlannedStops {
  readonly stops: readonly { readonly paperId: string; readonly setting: number; readonly template: StopsTemplate }[];
  /** One, as long as the job places the image alike on all papers. */
  readonly settings: readonly StopSetting[];
  readonly problems: readonly Problem[];
}

interface Gathered {
  readonly from: readonly [number, number];
  readonly papers: JobPaper[];
}

/** Places nearer than this are one. */
const sameMm = 0.05;

/**
 * Every paper goes through every run, so all share one corner, where the stops stand once until the last run. A paper that says
 * where its image lies decides for the others; else the image lies in the middle of the smallest sheet and off-centre on larger
 * ones. Two papers that ask for different places need two settings: that is said.
 */
export function planStops(job: Pick<Job, 'papers' | 'image'>, gapMm: number): PlannedStops {
  const settings = gather(job);
  const problems: Problem[] = [];
  const stops = settings.flatMap(({ from, papers }, i) => {
    const stopsOnMm = [Math.min(...papers.map((p) => p.widthMm)), Math.min(...papers.map((p) => p.heightMm))] as const;
    const thickest = Math.max(...papers.map((p) => p.thicknessMm));
    return papers.flatMap((paper) => {
      try {
        const template = stopsTemplate({
          sheetMm: [paper.widthMm, paper.heightMm],
          imageMm: [job.image.widthMm, job.image.heightMm],
          imageAtMm: [from[0], paper.heightMm - from[1] - job.image.heightMm],
          sheetThicknessMm: thickest,
          gapMm,
          stopsOnMm,
          edge: paper.edge,
          paper: `papers[#${paper.id}]`,
        });
        problems.push(...template.problems);
        return [{ paperId: paper.id, setting: i + 1, template }];
      } catch (error) {
        if (!(error instanceof ProblemError)) throw error;
        problems.push(...error.problems);
        return [];
      }
    });
  });
  if (settings.length > 1) problems.push(severalSettings(settings));
  return {
    stops: job.papers.flatMap((paper) => stops.filter((s) => s.paperId === paper.id)),
    settings: settings.map(({ from, papers }, i) => ({
      number: i + 1,
      paperIds: papers.map((p) => p.id),
      imageFromCornerMm: from,
      thicknessMm: stops.find((s) => s.setting === i + 1)?.template.thicknessMm ?? [0, 0],
    })),
    problems,
  };
}

function gather({ papers, image }: Pick<Job, 'papers' | 'image'>): Gathered[] {
  const settings: Gathered[] = [];
  for (const paper of papers) {
    if (!paper.imageAtMm) continue;
    const [x, y] = paper.imageAtMm;
    const from = [x, paper.heightMm - y - image.heightMm] as const;
    const known = settings.find((s) => Math.hypot(s.from[0] - from[0], s.from[1] - from[1]) < sameMm);
    if (known) known.papers.push(paper);
    else settings.push({ from, papers: [paper] });
  }
  const fits = (paper: JobPaper, [across, up]: Gathered['from']): boolean =>
    across + image.widthMm <= paper.widthMm && up + image.heightMm <= paper.heightMm;
  const open: JobPaper[] = [];
  for (const paper of papers.filter((p) => !p.imageAtMm)) {
    const takes = settings.find((s) => fits(paper, s.from));
    if (takes) takes.papers.push(paper);
    else open.push(paper);
  }
  if (open.length > 0) {
    const least = (of: (p: JobPaper) => number): number => Math.min(...open.map(of));
    const from = [least((p) => (p.widthMm - image.widthMm) / 2), least((p) => (p.heightMm - image.heightMm) / 2)] as const;
    settings.push({ from, papers: open });
  }
  return settings;
}

function severalSettings(settings: readonly Gathered[]): Problem {
  const places = settings.map(({ from, papers }, i) =>
    say('register.settingOf', {
      n: i + 1,
      papers: list(papers.map((p) => asName(p.name))),
      from: lengths(from, '×', 1),
    }),
  );
  return problem(
    'warning',
    'stop-settings',
    'papers',
    say('register.severalSettings', { n: settings.length, settings: list(places, 'semicolon') }),
    say('register.oneSetting'),
  );
}
