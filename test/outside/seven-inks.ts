import { readFileSync } from 'node:fs';
import { deltaE00, type Lab } from '../../src/core/colour/index.ts';
import { parseJob, type Job } from '../../src/core/job/index.ts';
import { createPlanner, type PlannedPaper } from '../../src/core/plan/index.ts';
import type { Outcome } from './overprint-jobs.ts';

/**
 * No open set of seven spot inks and their overlaps exists. The nearest: characterisation data with cyan, magenta and yellow at 40 per
 * cent taken as inks of their own beside the four solids, so seven in all. Tints are dots, not films, so single inks hide more of their
 * overlaps than real ones would. Two strengths of one ink never overlap.
 */
type Set = Readonly<Record<string, Lab>>;
export const sevenSets = (
  JSON.parse(readFileSync(new URL('data/seven-inks.json', import.meta.url), 'utf8')) as { readonly sets: Readonly<Record<string, Set>> }
).sets;

/** Black first, then as offset prints: strong before weak, never both. */
const inks = [...'KCcMmYy'];
const orderOf = (name: string): string[] => (name === 'W' ? [] : inks.filter((ink) => name.includes(ink)));
const idOf = (ink: string): string => (ink === ink.toLowerCase() ? `${ink}-weak` : ink.toLowerCase());
const cell = 8;
const across = 8;

/** Every combination that was measured, on a square of its own. */
export function sevenJob(set: Set, taught: readonly string[] = []): Job {
  const reading = (name: string): { kind: 'lab'; lab: [number, number, number] } => ({
    kind: 'lab',
    lab: [...set[name]] as [number, number, number],
  });
  const cells = Object.keys(sevenSets.FOGRA39L).filter((name) => name !== 'W');
  const there = (ink: string): { form: string; xMm: number; yMm: number }[] =>
    cells.flatMap((name, at) =>
      name.includes(ink) && set[name]
        ? [{ form: 'square', xMm: (at % across) * cell + cell / 2, yMm: Math.floor(at / across) * cell + cell / 2 }]
        : [],
    );
  return parseJob({
    schemaVersion: 1,
    title: 'Seven inks',
    image: { widthMm: across * cell, heightMm: Math.ceil(cells.length / across) * cell },
    // No stencil held these films up along their edges: a sheet without thickness.
    materials: [{ id: 'none', name: 'No sheet', thicknessMm: 0.001, leastBridgeMm: 2, leastOpeningMm: 1, prints: [1000, 1000] }],
    forms: [{ id: 'square', name: 'Square', made: { kind: 'flat', widthMm: cell, heightMm: cell } }],
    cuts: inks.map((ink) => ({ id: idOf(ink), name: ink, parts: there(ink) })),
    layers: inks.map((ink) => ({ id: idOf(ink), name: ink, cut: idOf(ink), side: 'window', ink: idOf(ink), islands: 'drop' })),
    inks: inks.map((ink) => ({ id: idOf(ink), name: ink, from: 'one-ground', ground: reading('W'), over: reading(ink) })),
    papers: [{ id: 'paper', name: 'Paper', reading: reading('W'), widthMm: 200, heightMm: 200, count: 5 }],
    proofReadings: taught.map((name) => ({ paper: 'paper', layers: orderOf(name).map(idOf), reading: reading(name) })),
  });
}

const planner = createPlanner();
const planned = (set: Set, taught: readonly string[]): PlannedPaper =>
  planner.plan({ job: sevenJob(set, taught), attachments: new Map() }).papers[0];
const nameOf = (layers: readonly string[]): string => inks.filter((ink) => layers.includes(idOf(ink))).join('');

/** All that was measured of two inks or more. */
export const sevenOverlaps = (set: Set): { name: string; ids: string[]; lab: Lab }[] =>
  Object.entries(set)
    .map(([name, lab]) => ({ name: orderOf(name).join(''), ids: orderOf(name).map(idOf), lab }))
    .filter((o) => o.ids.length > 1);

/** Overlaps that were neither read nor left out. */
export function sevenOutcomes(set: Set, taught: readonly string[], but: readonly string[] = taught): Outcome[] {
  return planned(set, taught).overlaps.flatMap((one): Outcome[] => {
    const name = nameOf(one.layers);
    const measured = set[Object.keys(set).find((key) => orderOf(key).join('') === name) ?? ''];
    return one.layers.length < 2 || !measured || but.some((other) => orderOf(other).join('') === name)
      ? []
      : [{ name, off: deltaE00(one.lab, measured), band: one.band }];
  });
}

/** Readings taken one batch after the other where the tool names them. */
export function sevenNamed(set: Set, n: number): string[] {
  const key = (name: string): string => Object.keys(set).find((other) => orderOf(other).join('') === name)!;
  let taught: string[] = [];
  while (taught.length < n) {
    const worth = planned(set, taught).worthReading;
    if (!worth) break;
    taught = [...taught, ...worth.picks.slice(0, n - taught.length).map((pick) => key(nameOf(pick.layers)))];
  }
  return taught;
}
