import {
  binomialAt,
  colophon,
  documentationSheet,
  foldLog,
  numberEdition,
  planDay,
  planSheets,
  wearOf,
  readLog,
  sheetsFromCount,
  teachingHandout,
  type CountState,
  type DayPlan,
  type DocumentationSheet,
  type Handout,
  type NumberedEdition,
  type RecordFacts,
  type RunWear,
  type SheetPlan,
  type WearRun,
} from '../../../edition/index.ts';
import type { Job, JobBundle, JobLayer } from '../../../job/index.ts';
import type { Mesh } from '../../../press/index.ts';
import { attempt, type Problem } from '../../../problem.ts';
import { asWritten, figure, film, length, listed, name as asName, say, sentences, share, type Saying } from '../../../../words/say.ts';
import { letDownParts } from '../colour/mix.ts';
import type { PlannedPress } from './press.ts';
import { pick, type Memory } from '../../memory.ts';
import { materialFor } from '../cut/stencils.ts';
import type { PlannedRegister } from './register.ts';

/** Where the count at the press is kept among the attachments: one line an event, see core/edition/sheets/count-log.ts. */
export const countLogName = 'press-count.log';

/** How many sheets through which runs, the day by the hour, and the record. */
export interface PlannedEdition {
  /** null where the wishes can't be planned; `problems` says why. */
  readonly sheets: SheetPlan | null;
  /** For each paper of `sheets`: chance of exactly 0, 1, 2, … good sheets out of those started. */
  readonly chances: readonly { readonly paperId: string; readonly exactly: readonly number[] }[];
  /** Pulls of each run in laydown order, set-up and check sheets counted; open layers are planned like the others. */
  readonly pullsOfRun: readonly number[];
  /** Run by run: sheets that are pulled and not meant for the edition, at the start and after a change of stencil. */
  readonly setUpOfRun: readonly number[];
  /** Run by run: where its stencil gives out and the next is mounted. */
  readonly wear: readonly RunWear[];
  /** Names of the sheets, as pencilled on their backs: paper by paper, in the order they go through. */
  readonly sheetNames: readonly { readonly id: string; readonly paper: string }[];
  readonly day: DayPlan | null;
  readonly facts: RecordFacts;
  readonly handout: Handout | null;
  /** What was counted at the press so far; null before the first pull. */
  readonly counted: CountState | null;
  /** Marks for the sheets counted so far. */
  readonly numbered: NumberedEdition | null;
  readonly documentation: DocumentationSheet | null;
  /** null before anything is counted. */
  readonly colophon: Saying | null;
  readonly problems: readonly Problem[];
}

/** The screen's gap, and those of runs that have one of their own. */
function sayGaps(layers: readonly Pick<JobLayer, 'id' | 'name'>[], press: Pick<PlannedPress, 'gapMm' | 'gaps'>): Saying {
  const own = press.gaps
    .filter((gap) => gap.own)
    .map((gap) => {
      const run = layers.findIndex((l) => l.id === gap.layerId);
      return say('record.gapOfRun', { run: run + 1, layer: asName(layers[run]?.name ?? gap.layerId), gap: length(gap.gapMm) });
    });
  return sentences(say('record.gapIs', { gap: length(press.gapMm) }), ...own);
}

const jobFields = ['edition', 'day', 'papers', 'title', 'maker', 'units', 'image', 'inks', 'cuts', 'materials'] as const;
const layerFields = ['tone', 'id', 'name', 'cut', 'side', 'ink', 'strength', 'base', 'bases', 'note'] as const;
type EditionJob = Pick<Job, (typeof jobFields)[number]>;
type EditionLayer = Pick<JobLayer, (typeof layerFields)[number]>;

/** What a run's stencil is cut from, as far as it wears out. */
export interface RunMaterial extends Pick<WearRun, 'group' | 'washable' | 'lasts'> {
  /** Groups of one set come from the same sheets: a window, and the piece that drops out of it. */
  readonly set: string;
  /** Of one sheet of the set. */
  readonly cutMinutes: number;
  /** How much thicker its film lies in the mean, for the ridge along its edges: it dries so much longer. */
  readonly dries: number;
}

interface EditionReads {
  readonly materials: readonly RunMaterial[];
  readonly job: EditionJob;
  readonly layers: readonly EditionLayer[];
  readonly press: PlannedPress;
  readonly register: Saying;
  readonly toleranceMm: number;
  readonly log: Uint8Array | undefined;
}

/** `planEdition`, remembered. */
export function editionOf(
  { job, attachments }: JobBundle,
  layers: readonly JobLayer[],
  press: PlannedPress,
  { sigma }: PlannedRegister,
  materials: readonly RunMaterial[],
  memory: Memory,
): PlannedEdition {
  const read = layers.map((l) => pick(l, ...layerFields));
  const reads = {
    job: pick(job, ...jobFields),
    layers: read,
    press,
    register: sigma.text,
    toleranceMm: sigma.toleranceMm,
    materials,
    log: attachments.get(countLogName),
  };
  return memory.part('edition', reads, editionFrom);
}

const editionFrom = ({ job, layers, press, register, toleranceMm, materials, log }: EditionReads): PlannedEdition =>
  planEdition(job, layers, press, register, toleranceMm, materials, log);

/** Sheets, the day, the hand-out, and what the count at the press has come to. */
export function planEdition(
  job: EditionJob,
  layers: readonly EditionLayer[],
  press: PlannedPress,
  registerText: Saying,
  toleranceMm: number,
  materials: readonly RunMaterial[],
  log: Uint8Array | undefined,
): PlannedEdition {
  const problems: Problem[] = [];
  const ready = job.papers.length > 0 && layers.length > 0;
  const sheets = ready ? attempt(problems, () => sheetsOf(job, layers.length)) : null;
  // Too few sheets is no reason to print no packet: proofs and stencils come first.
  if (sheets) problems.push(...sheets.problems.map((p) => (p.severity === 'error' ? { ...p, severity: 'warning' as const } : p)));
  const sheetNames = namesOf(sheets);
  const wear = sheets
    ? wearOf(sheets.runs.map(({ prepare }, run) => ({ ...materials[run], setUp: sheets.setUp.perRun, sheets: prepare })))
    : [];
  const day = sheets
    ? attempt(problems, () => dayOf({ job, layers, sheets, names: sheetNames, wear, materials, toleranceMm, press }))
    : null;
  if (day) problems.push(...day.problems);
  const facts = factsOf(job, layers, press);
  const counted = log && log.length > 0 ? foldLog(readLog(new TextDecoder().decode(log)).events) : null;
  const numbered =
    counted && counted.standing.length > 0 ? attempt(problems, () => numbersOf(job, layers, counted, sheetNames, sheets)) : null;
  if (numbered && counted?.runs.length === layers.length) problems.push(...numbered.problems);
  return {
    sheets,
    chances: (sheets?.papers ?? []).map(chancesOf),
    pullsOfRun: sheets ? wear.map((run) => run.pulls) : layers.map(() => 0),
    setUpOfRun: sheets ? wear.map((run, i) => run.pulls - sheets.runs[i].prepare) : layers.map(() => 0),
    wear,
    sheetNames,
    day,
    facts,
    handout: ready ? attempt(problems, () => handoutOf(job, layers, press, facts, registerText, day)) : null,
    counted,
    numbered,
    documentation: numbered && documentationSheet(facts, numbered),
    colophon: numbered && colophon(facts, numbered),
    problems,
  };
}

/** Runs a part; what it refuses becomes a problem of the Plan, and the part is missing. */

function proofsOf({ edition }: Pick<Job, 'edition'>) {
  return pick(edition, 'artistsProofShare', 'batProofs', 'printersProofs', 'horsCommerce');
}

/** Which sheets to start with for the wishes of a job. Throws `ProblemError`. */
export function sheetsOf(job: Pick<Job, 'edition' | 'papers'>, runs: number): SheetPlan {
  const { edition } = job;
  return planSheets({
    papers: job.papers.map((p) => ({ id: p.id, name: p.name, count: p.count, target: p.wantedPrints, printed: p.printed !== undefined })),
    proofsOn: edition.proofsOn,
    target: edition.target,
    certainty: edition.certainty,
    spoilagePerRun: Array.from({ length: runs }, () => edition.spoilagePerRun),
    setUpSheets: edition.setUpSheets,
    proofs: proofsOf(job),
  });
}

type SheetNames = PlannedEdition['sheetNames'];

/** A1, A2, … on the first paper, B1 … on the second. */
function namesOf(sheets: SheetPlan | null): SheetNames {
  return (sheets?.papers ?? []).flatMap((paper, i) =>
    Array.from({ length: paper.start }, (_, k) => ({ id: `${String.fromCharCode(65 + (i % 26))}${k + 1}`, paper: paper.paperId })),
  );
}

function chancesOf(paper: SheetPlan['papers'][number]): PlannedEdition['chances'][number] {
  const share = paper.start > 0 ? paper.expectedGood / paper.start : 1;
  return { paperId: paper.paperId, exactly: Array.from({ length: paper.start + 1 }, (_, good) => binomialAt(paper.start, good, share)) };
}

/** Minutes at the knife for every sheet: a pair's sheets give both sides, so the side that needs more decides. */
function cuttingMinutes(materials: readonly RunMaterial[], wear: readonly RunWear[]): number {
  const sets = new Map<string, { minutes: number; sheets: Map<string, number> }>();
  materials.forEach(({ set, group, cutMinutes }, run) => {
    const one = sets.get(set) ?? { minutes: cutMinutes, sheets: new Map<string, number>() };
    one.sheets.set(group, (one.sheets.get(group) ?? 0) + wear[run].fresh);
    sets.set(set, one);
  });
  return [...sets.values()].reduce((sum, { minutes, sheets }) => sum + minutes * Math.max(...sheets.values()), 0);
}

/** Drying against usual printing paper: hard-sized and coated papers leave the water to the air, soft ones drink it. common practice, to be replaced by one trial */
const dryingOn = { low: 1.4, usual: 1, high: 0.8 } as const;

function dayOf(from: {
  readonly job: EditionJob;
  readonly layers: readonly EditionLayer[];
  readonly sheets: SheetPlan;
  readonly names: SheetNames;
  readonly wear: readonly RunWear[];
  readonly materials: readonly RunMaterial[];
  readonly toleranceMm: number;
  readonly press: Pick<PlannedPress, 'runs'>;
}): DayPlan {
  const { job, layers, sheets, names, wear, materials, toleranceMm, press } = from;
  const { mealHour, mealMinutes, mixing, ...day } = job.day;
  const eats = mealMinutes > 0 && mealHour > day.startHour && mealHour < day.endHour;
  const meshOf = (id: string): string | undefined => press.runs.find((r) => r.layerId === id && r.own)?.name;
  const meshes = new Set(layers.flatMap((l) => meshOf(l.id) ?? []));
  const usual = layers.some((l) => meshOf(l.id) === undefined) ? 1 : 0;
  const times = new Map(job.papers.map((p) => [p.id, dryingOn[p.absorbency]]));
  const dryTimes = names.map((s) => times.get(s.paper) ?? 1);
  return planDay({
    runs: layers.map((l, run) => ({
      id: l.id,
      name: l.name,
      sheets: names.slice(0, sheets.runs[run].prepare).map((s) => s.id),
      setUpSheets: sheets.setUp.perRun,
      changes: wear[run].changes,
      washable: materials[run].washable,
      dryMinutes: day.dryMinutes * materials[run].dries,
      screen: meshOf(l.id),
      ...(dryTimes.every((t) => t === 1) ? {} : { dryTimes }),
    })),
    ...day,
    ...(meshes.size > 0 ? { screens: Math.max(day.screens, meshes.size + usual), screensByMesh: true } : {}),
    ...(eats ? { rest: { hour: mealHour, minutes: mealMinutes } } : {}),
    ...(mixing === 'day-before' ? { before: { cutMinutes: cuttingMinutes(materials, wear) } } : {}),
    toleranceMm,
  });
}

function handoutOf(
  job: EditionJob,
  layers: readonly EditionLayer[],
  press: PlannedPress,
  facts: RecordFacts,
  register: Saying,
  day: DayPlan | null,
): Handout {
  return teachingHandout({
    title: job.title,
    maker: job.maker || undefined,
    imageMm: facts.imageMm,
    sheetMm: facts.papers[0].sizeMm,
    mesh: facts.layers[0].mesh,
    register,
    gap: sayGaps(layers, press),
    dryMinutes: day?.dryMinutes ?? job.day.dryMinutes,
    setUpSheets: job.edition.setUpSheets,
    layers: layers.map((l, i) => ({
      id: l.id,
      name: l.name,
      stencil: facts.layers[i].stencil,
      material: materialFor(job, l.cut),
      ink: l.ink === null ? null : { id: l.ink, name: facts.layers[i].ink },
      recipe: facts.layers[i].recipe,
      amount: say('record.amountOnCard'),
      lookFor: l.note,
    })),
    papers: job.papers.map((p) => ({ name: p.name, sheets: p.count })),
  });
}

/** Marks for the sheets that came through every run. */
function numbersOf(
  job: EditionJob,
  layers: readonly EditionLayer[],
  counted: CountState,
  names: SheetNames,
  sheets: SheetPlan | null,
): NumberedEdition {
  const { edition } = job;
  const runs = layers.map((l) => l.id);
  const kept = names.map((s) => ({ ...s, kept: edition.setApart[s.id] }));
  return numberEdition({
    sheets: sheetsFromCount(counted, kept, runs),
    runs,
    target: edition.target || undefined,
    proofs: proofsOf(job),
    planned: sheets?.papers,
    proofsOn: edition.proofsOn,
    papersAre: edition.papersAre,
  });
}

function factsOf(job: EditionJob, layers: readonly EditionLayer[], press: PlannedPress): RecordFacts {
  const meshOf = (id: string): Mesh => (press.runs.find((r) => r.layerId === id)?.deposit ?? press.deposit).mesh;
  return {
    title: job.title,
    artist: job.maker || undefined,
    year: job.edition.year,
    workshop: job.edition.workshop,
    ...job.edition.record,
    imageMm: [job.image.widthMm, job.image.heightMm],
    papers: job.papers.map((p) => ({ id: p.id, name: p.name, sizeMm: [p.widthMm, p.heightMm] as const })),
    layers: layers.map((l) => {
      const parts = letDownParts(job, l);
      const ink = job.inks.find((k) => k.id === l.ink);
      return {
        name: l.name,
        stencil: l.tone
          ? say('halftone.byFilm')
          : say(l.side === 'window' ? 'record.windowIn' : 'record.pieceOf', { material: materialFor(job, l.cut).name }),
        ink: ink ? asWritten(ink.name) : say('record.inkOpen'),
        recipe:
          parts.length === 0
            ? null
            : listed(
                parts.map((p) => say('record.recipePart', { share: share(p.share, 0), ink: p.name })),
                'comma',
              ),
        mesh: say('record.mesh', { perCm: figure(meshOf(l.id).perCm, 1, false), thread: film(meshOf(l.id).threadMicrons) }),
      };
    }),
  };
}
