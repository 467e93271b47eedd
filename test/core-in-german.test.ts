import { beforeAll, describe, expect, test } from 'vitest';
import { prepare } from '../src/cli/assets.ts';
import { readJobAt } from '../src/cli/folder.ts';
import { cancellationSteps, labelsFor } from '../src/core/edition/index.ts';
import { parseJob, type Job } from '../src/core/job/index.ts';
import { createPlanner, readyBundle, type Plan, type ReadyBundle } from '../src/core/plan/index.ts';
import { ProblemError, type Problem } from '../src/core/problem.ts';
import { coreInGerman } from '../src/workbench/words/core/de/index.ts';
import { phrasebook } from '../src/workbench/words/core/phrasebook.ts';

const german = phrasebook(coreInGerman, ',');
let bundle: ReadyBundle;
let first: Plan;
/** It remembers what it made: a changed job costs only what changed. */
const planner = createPlanner();
beforeAll(async () => {
  await prepare();
  bundle = await readyBundle(readJobAt(new URL('../examples/tide-pool', import.meta.url).pathname));
  first = planner.plan(bundle);
});

/** Words that no German sentence has, and an English one hardly does without. */
const english =
  /\b(?:the|of|and|is|are|with|for|to|this|that|it|on|by|from|or|at|be|can|not|no|only|sheets?|ink|mesh|layer|stencil|paper|screen|press|run)\b/i;
const ownWords = (job: Job): string[] => {
  const found: string[] = [];
  JSON.stringify(job, (_, value: unknown) => {
    if (typeof value === 'string') found.push(value);
    return value;
  });
  return found.filter((t) => t.length > 2).sort((a, b) => b.length - a.length);
};

/** What stays English of texts of core, the job's own names and notes set aside. */
function leftEnglish(texts: Iterable<string>, job: Job): string[] {
  const own = ownWords(job);
  const left: string[] = [];
  for (const text of new Set(texts)) {
    // The address of a field in the job is no word of any language.
    if (/^\w+(?:[.[\]\w]+)?$/.test(text)) continue;
    let said = german(text);
    for (const word of own) said = said.replaceAll(word, '·').replaceAll(word.toLowerCase(), '·');
    if (english.test(said.replace(/„[^“]*“|\([^()]*\bline \d+[^()]*\)/g, '·'))) left.push(`${text} → ${german(text)}`);
  }
  return left;
}

/** All texts in the parts of a Plan that come before a reader. */
function textsOf(p: Plan): string[] {
  const found: string[] = [];
  const walk = (node: unknown): void => {
    if (typeof node === 'string') {
      if (/\p{L}{2} /u.test(node)) found.push(node);
    } else if (Array.isArray(node)) node.forEach(walk);
    else if (node !== null && typeof node === 'object' && !ArrayBuffer.isView(node))
      for (const [key, value] of Object.entries(node)) if (!kinds.has(key)) walk(value);
  };
  const { handout, documentation, facts, day, sheets, numbered, colophon } = p.edition;
  walk([
    p.problems,
    p.cuts.map((c) => c.why),
    p.layers.map((l) => [l.mix?.note, l.ridge, l.stencil.certificate.method]),
    p.inks.map((i) => i.trust),
    p.papers.map((q) => [q.bandNote, q.learning?.words]),
    p.press,
    p.register.sigma,
    p.register.budget,
    handout,
    documentation?.fields.map((f) => f.label),
    documentation?.footing,
    facts.layers.map((l) => [l.stencil, l.mesh]),
    day?.steps,
    day?.problems,
    day?.openTime,
    sheets,
    colophon,
    numbered ? labelsFor(facts, numbered).map((l) => l.lines) : [],
    cancellationSteps,
  ]);
  return found;
}
/** Kinds, for which the screen has words of its own, and names. */
const kinds = new Set(['code', 'role', 'what', 'kind', 'severity', 'name', 'id', 'place']);

const said = (problems: readonly Problem[]): string[] =>
  problems.flatMap((p) => [p.message, p.advice, p.path].filter((t) => typeof t === 'string'));
const refusals = (raw: unknown): string[] => {
  try {
    parseJob(raw);
  } catch (error) {
    if (error instanceof ProblemError) return said(error.problems);
    throw error;
  }
  return [];
};

describe('what core says of real jobs is German to the last word', () => {
  test('tide-pool as it ships', () => {
    const texts = textsOf(first);
    expect(texts.length).toBeGreaterThan(100);
    expect(leftEnglish(texts, bundle.job)).toEqual([]);
    expect(leftEnglish(said(first.problems), bundle.job)).toEqual([]);
  });

  test.each<[string, (job: Job) => Partial<Job>]>([
    ['no screen', () => ({ screen: undefined })],
    [
      'a frame that is too small, and a gap that tears the mesh',
      (j) => ({ screen: { ...j.screen!, insideWidthMm: 200, insideHeightMm: 270, offContactMm: 25, squeegeeMm: 170 } }),
    ],
    [
      'slack mesh, low hinge, a squeegee that is too long',
      (j) => ({ screen: { ...j.screen!, tensionNPerCm: 4, hingeLiftMm: 0.5, offContactMm: undefined, squeegeeMm: 438 } }),
    ],
    ['tight mesh', (j) => ({ screen: { ...j.screen!, tensionNPerCm: 22 } })],
    ['a gap of its own for one run', (j) => ({ layers: j.layers.map((l, i) => (i === 2 ? { ...l, offContactMm: 9 } : l)) })],
    [
      'few sheets and a short day',
      (j) => ({
        papers: j.papers.map((p) => ({ ...p, count: 3 })),
        day: { ...j.day, startHour: 9, endHour: 11, rackPlaces: 2, pullsPerHour: 10, humidityPercent: 5 },
      }),
    ],
    ['a day without hours', (j) => ({ day: { ...j.day, startHour: 12, endHour: 12 } })],
    ['marks by eye, torn paper, damp air', () => ({ register: { method: 'by-eye', humidityPercent: [20, 80] } })],
    ['own register', (j) => ({ register: { ...j.register, sigmaMm: 0.15 } })],
    [
      'islands dropped and thin paper',
      (j) => ({
        layers: j.layers.map((l) => ({ ...l, islands: 'drop' as const })),
        materials: j.materials.map((m) => ({
          ...m,
          leastBridgeMm: 9,
          leastOpeningMm: 5,
          thicknessMm: 0.5,
          prints: [1, 2] as [number, number],
        })),
      }),
    ],
    ['nothing on the sheet', () => ({ layers: [], papers: [] })],
    [
      'names that are not there',
      (j) => ({
        layers: j.layers.map((l) => ({ ...l, ink: 'gone', base: 'gone' })),
        cuts: j.cuts.map((c) => ({ ...c, material: 'gone' })),
      }),
    ],
    ['an image that hangs over', (j) => ({ image: { ...j.image, widthMm: 300 } })],
  ])('tide-pool with %s', (_, change) => {
    const job = { ...bundle.job, ...change(bundle.job) };
    let texts: string[];
    try {
      const p = planner.plan({ ...bundle, job });
      texts = [...textsOf(p), ...said(p.problems)];
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      texts = said(error.problems);
    }
    expect(texts.length).toBeGreaterThan(0);
    expect(leftEnglish(texts, job)).toEqual([]);
  });

  test('a job that is broken', () => {
    const raw = JSON.parse(JSON.stringify(bundle.job)) as Record<string, unknown>;
    const broken = [
      { ...raw, title: 7 },
      { ...raw, units: 'yard' },
      { ...raw, seed: -1 },
      { ...raw, image: { widthMm: 1e9, heightMm: 0 } },
      { ...raw, layers: {} },
      { ...raw, schemaVersion: 99 },
      { title: 'x' },
      [],
      { ...raw, inks: [{ id: 'Not Fit!', name: '' }] },
    ];
    const texts = broken.flatMap(refusals);
    expect(texts.length).toBeGreaterThan(15);
    expect(leftEnglish(texts, bundle.job)).toEqual([]);
  });
});
