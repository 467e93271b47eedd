import { curveAt, moireOf, moirePicture, onPixels, seen, type Raster, type TonePatch } from '../halftone/index.ts';
import type { Plan, PlannedLayer, PlannedTone } from '../plan/index.ts';
import { figure, film, length, list, name as asName, say, share, type Saying } from '../../words/say.ts';

/** What the eye hardly notices, and from where it is plain to see. */
const weak = 0.05,
  strong = 0.3;

/** Bands that films make with the mesh and with one another, the plainest first: what to say of each. */
export function filmBands(plan: Pick<Plan, 'layers'>): Saying[] {
  const dots = plan.layers.flatMap((l) => (l.tone?.by === 'dots' ? [{ l, tone: l.tone }] : []));
  const raster = ({ tone }: (typeof dots)[number]): Raster => ({
    perCm: tone.rulingPerCm,
    angleDeg: tone.angleDeg,
    oneWay: tone.shape === 'line',
  });
  const pairs = dots.flatMap((one, i) => [
    { names: [asName(one.l.name), say('halftone.theMesh')], a: { perCm: one.tone.meshPerCm, angleDeg: 0 }, b: raster(one) },
    ...dots.slice(0, i).map((other) => ({ names: [asName(other.l.name), asName(one.l.name)], a: raster(other), b: raster(one) })),
  ]);
  return pairs
    .flatMap(({ names, a, b }) => {
      const [first] = moireOf(a, b);
      return first && seen(first) >= weak ? [{ names, first }] : [];
    })
    .sort((m, n) => seen(n.first) - seen(m.first))
    .map(({ names, first }) =>
      say(seen(first) >= strong ? 'halftone.moireStrong' : 'halftone.moireOf', {
        layers: list(names, 'and'),
        period: length(Math.min(first.periodMm, 500), 1),
      }),
    );
}

/** Of the patch that shows the bands at true size, mm. */
export const bandsPatchMm = { widthMm: 60, heightMm: 40 } as const;

/**
 * Half tones of all films on one another, on one paper, at true size: how their bands would look. null: no film of dots.
 * @param screenPerMm pixels of the screen that it is looked at on; left out: finer than dots
 */
export function bandsPatch(
  plan: Pick<Plan, 'layers'>,
  paper: Pick<Plan['papers'][number], 'palette'>,
  screenPerMm = Infinity,
): TonePatch | null {
  const films = plan.layers.flatMap(({ bit, tone, inkId }) => (tone && inkId !== null ? [{ ...tone, bit, cover: 0.5 }] : []));
  if (!films.some((f) => f.by === 'dots')) return null;
  return onPixels(moirePicture(films, paper.palette, bandsPatchMm.widthMm, bandsPatchMm.heightMm), screenPerMm);
}

/** The page holds its papers without what it does not show. */
export interface WithTones {
  readonly papers: readonly Pick<Plan['papers'][number], 'tones'>[];
}

/** What half a tone on a run's film comes to on paper. */
export function halfTone(plan: WithTones, layer: Pick<PlannedLayer, 'id'>): number {
  const tones = plan.papers.find((p) => p.tones)?.tones;
  const at = tones?.layers.indexOf(layer.id) ?? -1;
  return tones && at >= 0 ? curveAt(tones.model.curves[at], 0.5) : 0.5;
}

/** How a run's film stands, and what it covers. */
export function filmSays(plan: WithTones, layer: Pick<PlannedLayer, 'id'> & { readonly tone: PlannedTone }): Saying[] {
  const { tone } = layer;
  const gain = share(halfTone(plan, layer), 0);
  return [
    tone.by === 'grain'
      ? say('halftone.grainFacts', { least: film(tone.leastDotMicrons, 0), gain })
      : say('halftone.filmFacts', {
          ruling: figure(tone.rulingPerCm, 1, false),
          angle: figure(tone.angleDeg, 1, false),
          threads: figure(tone.meshPerCm / tone.rulingPerCm, 1, false),
          gain,
        }),
    say('halftone.filmCovers', { film: share(tone.meanOnFilm, 0), paper: share(tone.meanOnPaper, 0) }),
    ...(tone.exposeSeconds === null ? [] : [say('halftone.filmExposed', { time: figure(tone.exposeSeconds, 1, false) })]),
  ];
}
