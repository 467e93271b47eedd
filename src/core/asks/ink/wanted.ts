import { deltaE00, srgbFromXyz, xyzFromLab, type Lab } from '../../colour/index.ts';
import { toneForesight } from '../../halftone/index.ts';
import type { Job } from '../../job/index.ts';
import type { Plan } from '../../plan/index.ts';
import { seeded } from '../../random.ts';

type Wanted = Job['wanted'][number];
/** What is asked of a paper as planned. */
export type WantedOn = Pick<Plan['papers'][number], 'overlaps' | 'tones'>;

/** A colour that somebody wants of an overlap, or of tones of it, beside what the print makes of it now. */
export interface WantedHere {
  readonly wanted: Wanted;
  /** null: no such overlap, as long as one of its runs is open or left out. */
  readonly now: { readonly lab: Lab; readonly srgb: string; readonly band: number } | null;
  readonly deltaE: number | null;
}

/** Whether some run lies there as a tone, not solid. */
export const wantsTone = ({ coverages }: Pick<Wanted, 'coverages'>): boolean => coverages?.some((c) => c < 1) ?? false;

/** The wish for one overlap against a paper as planned. Overlaps are told apart by their set of runs, tones by what their films cover. */
export function wantedHere(wanted: Wanted, on: WantedOn): WantedHere {
  const ids = new Set(wanted.layers);
  const now = wantsTone(wanted)
    ? toneHere(wanted, on.tones)
    : (on.overlaps.find((o) => o.layers.length === ids.size && o.layers.every((id) => ids.has(id))) ?? null);
  return { wanted, now, deltaE: now && deltaE00(now.lab, wanted.lab) };
}

function toneHere({ layers, coverages = [] }: Wanted, tones: WantedOn['tones']): WantedHere['now'] {
  if (!tones || layers.length !== coverages.length || !layers.every((id) => tones.layers.includes(id))) return null;
  const covers = tones.layers.map((id) => coverages[layers.indexOf(id)] ?? 0);
  // A cut run lies solid or not at all.
  if (covers.some((c, i) => c > 0 && c < 1 && !tones.carries[i])) return null;
  const foresight = toneForesight(tones.model);
  const [l, a, b] = foresight.lab(covers);
  return { lab: [l, a, b], srgb: srgbFromXyz(xyzFromLab([l, a, b])).hex, band: foresight.band(covers) };
}

const sampled = 1000;

/**
 * How likely a print falls within ΔE00 `within` of a wanted tone: a normal cloud around the foreseen colour, as wide as chroma and hue are seen
 * (CIE 116), and so large that nine in ten of it lie within the band. Seeded.
 */
export function chanceWithin(now: { readonly lab: Lab; readonly band: number }, wanted: Lab, within: number): number {
  const random = seeded(11);
  const [l, a, b] = now.lab;
  const chroma = Math.hypot(a, b);
  const [ca, cb] = chroma > 0 ? [a / chroma, b / chroma] : [1, 0];
  const cloud = Array.from({ length: sampled }, (): Lab => {
    const [along, across] = [(1 + 0.045 * chroma) * random.normal(), (1 + 0.015 * chroma) * random.normal()];
    return [random.normal(), along * ca - across * cb, along * cb + across * ca];
  });
  const near = ([dl, da, db]: Lab, sigma: number): Lab => [l + sigma * dl, a + sigma * da, b + sigma * db];
  const unit = cloud.map((d) => deltaE00(near(d, 1), now.lab)).sort((x, y) => x - y)[Math.floor(0.9 * sampled)];
  const sigma = now.band / unit;
  return cloud.filter((d) => deltaE00(near(d, sigma), wanted) <= within).length / sampled;
}

/** Its runs by their names, tones with what their films cover. */
export function wantedName({ layers, coverages }: Wanted, runs: readonly { readonly id: string; readonly name: string }[]): string {
  const shareOf = (i: number): string => (coverages?.[i] === undefined || coverages[i] === 1 ? '' : ` ${Math.round(coverages[i] * 100)} %`);
  return layers.map((id, i) => (runs.find((l) => l.id === id)?.name ?? id) + shareOf(i)).join(' + ');
}
