import { deltaE00, labFromXyz, xyzFromLab, type Lab, type Xyz } from '../../colour/index.ts';
import { fail, problem, type Problem } from '../../problem.ts';
import { deltaE as byDeltaE, figure, say, share, type Saying } from '../../../words/say.ts';
import { exp, log, pow, solveDamped } from '../../numeric/index.ts';
import type { Reading } from '../types.ts';
import { sampleQuad, type Photograph, type Point, type Quad, type Sample } from './sample.ts';

export interface PhotoAsk {
  readonly photo: Photograph;
  /** Bare paper around the drawdowns: three places at least, better eight, spread over the picture. */
  readonly paper: readonly Quad[];
  /** The paper's known colour; left out, it is taken as usual white paper and the doubt grows. */
  readonly paperLab?: Lab;
  /** A grey card and its colour: sets the scale better than paper of unknown colour. */
  readonly grey?: { readonly quad: Quad; readonly lab: Lab };
  /** Patches of a chart whose colours are known; from six on they make the conversion. */
  readonly chart?: readonly { readonly quad: Quad; readonly lab: Lab }[];
  /** `name`: what a patch is, where something is wrong with it. */
  readonly patches: readonly { readonly name: Saying; readonly quad: Quad }[];
  /** Which photograph. */
  readonly place: Saying;
}

export interface PhotoRead {
  /** In the order asked. */
  readonly patches: readonly {
    readonly reading: Reading & { readonly kind: 'photo' };
    readonly problems: readonly Problem[];
  }[];
  readonly paper: Lab;
  /** Mean ΔE00 of the chart's patches after the fit, when there is a chart. */
  readonly chartError: number | null;
  /** Brightest against darkest place of the paper before evening out, 1 = even light. */
  readonly unevenness: number;
  /** Any light of the photograph as a colour: evened out where it was seen, brought to the paper's scale. */
  readonly xyzAt: (light: readonly number[], at: Point) => Xyz;
  readonly problems: readonly Problem[];
}

/** Places of bare paper that a plane through its light needs. */
const leastPaper = 3;
/** Patches of a chart that the conversion needs. */
const leastChart = 6;
/** L* of a patch that paper marks on something dark would make; fluorescent inks stay below (from memory). */
const mostLightness = 110;

/** Usual white printing paper (common practice), when nobody knows. */
const usualPaper: Lab = [94, 0, 1];
/** Doubts of photographed colours, ΔE00 (docs/optics.md 7: 4..5 simulated, real likely 5..8). */
const doubt = { withChart: 4, withGrey: 6, withPaper: 7, withNothing: 9 } as const;

/**
 * Colours of drawdowns out of a photograph (docs/optics.md 7): light made linear, evened out over the bare paper,
 * scaled by grey card or paper, brought to XYZ by a chart where there is one. Every reading carries its doubt.
 * @throws ProblemError when there is too little paper to even the light out, or the paper is burnt out
 */
export function readPhoto(ask: PhotoAsk): PhotoRead {
  const { photo, place } = ask;
  if (photo.width < 16 || photo.height < 16 || photo.data.length < photo.width * photo.height * 4) {
    fail('photo-too-small', place, say('readings.photoTooSmall'), say('readings.fillFrame'));
  }
  if (ask.paper.length < leastPaper)
    fail('too-little-paper', place, say('readings.littlePaper', { n: ask.paper.length, needed: leastPaper }), say('readings.markPaper'));
  const paper = ask.paper.map((quad) => sampleQuad(photo, quad));
  const burnt = paper.filter((s) => s.clipped > 0.2).length;
  if (burnt > paper.length / 2) fail('photo-clipped', place, say('readings.burntOut'), say('readings.exposeLess'));
  const problems: Problem[] = [];
  if (burnt > 0)
    problems.push(
      problem(
        'warning',
        'photo-clipped',
        place,
        say('readings.partlyBurntOut', { n: burnt, all: paper.length }),
        say('readings.exposeEvenly'),
      ),
    );
  const even = evenOut(
    paper.filter((s) => s.clipped <= 0.2),
    photo.width,
    photo.height,
  );
  if (even.unevenness > 1.6)
    problems.push(
      problem(
        'warning',
        'light-uneven',
        place,
        say('readings.lightUneven', { times: figure(even.unevenness, 1) }),
        say('readings.betterLight'),
      ),
    );
  if (even.leftOver > 0.05)
    problems.push(
      problem('warning', 'light-patchy', place, say('readings.lightPatchy', { by: share(even.leftOver, 0) }), say('readings.noShadows')),
    );
  const evened = (light: readonly number[], at: Point): [number, number, number] =>
    even.level(at).map((level, c) => light[c] / level) as [number, number, number];
  const lit = (s: Sample): [number, number, number] => evened(s.rgb, s.centre);

  const chart = (ask.chart ?? []).map(({ quad, lab }) => ({ sample: sampleQuad(photo, quad), lab })).filter((c) => c.sample.clipped < 0.2);
  const paperLab = ask.paperLab ?? usualPaper;
  let toXyz: (rgb: readonly number[]) => Xyz;
  let sigma: number;
  let chartError: number | null = null;
  if (chart.length >= leastChart) {
    const known = [
      ...chart.map((c) => ({ rgb: lit(c.sample), xyz: xyzFromLab(c.lab) })),
      ...(ask.paperLab ? [{ rgb: [1, 1, 1], xyz: xyzFromLab(paperLab) }] : []),
    ];
    toXyz = fitMatrix(known);
    const errors = chart.map((c) => deltaE00(labFromXyz(toXyz(lit(c.sample))), c.lab));
    chartError = errors.reduce((a, b) => a + b, 0) / errors.length;
    sigma = Math.max(doubt.withChart, 1.3 * chartError);
    if (chartError > 6)
      problems.push(
        problem(
          'warning',
          'chart-fits-badly',
          place,
          say('readings.chartFitsBadly', { off: byDeltaE(chartError) }),
          say('readings.checkChart'),
        ),
      );
  } else {
    const grey = ask.grey
      ? { rgb: lit(sampleQuad(photo, ask.grey.quad)), xyz: xyzFromLab(ask.grey.lab) }
      : { rgb: [1, 1, 1] as [number, number, number], xyz: xyzFromLab(paperLab) };
    toXyz = whiteBalanced(photo.space.toXyz, grey);
    sigma = ask.grey ? doubt.withGrey : ask.paperLab ? doubt.withPaper : doubt.withNothing;
    if (ask.chart && ask.chart.length > 0)
      problems.push(
        problem(
          'warning',
          'chart-too-small',
          place,
          say('readings.chartTooSmall', { n: chart.length, needed: leastChart }),
          say('readings.balancedInstead'),
        ),
      );
    if (!ask.grey && !ask.paperLab)
      problems.push(problem('warning', 'scale-unknown', place, say('readings.scaleUnknown'), say('readings.layGreyCard')));
  }
  const where = (patch: Saying): Saying => say('readings.patchAt', { where: place, patch });
  const patches = ask.patches.map(({ name, quad }) => {
    const sample = sampleQuad(photo, quad);
    const own: Problem[] = [];
    let off = sigma;
    if (sample.clipped > 0.05) {
      off += 4;
      own.push(problem('warning', 'patch-clipped', where(name), say('readings.patchBurntOut'), say('readings.distrustColour')));
    }
    if (sample.floored > 0.05) {
      off += photo.space.wide ? 2 : 4;
      own.push(
        problem(
          'warning',
          'patch-outside-photo',
          where(name),
          say('readings.outsidePhoto'),
          say(photo.space.wide ? 'readings.readsDuller' : 'readings.saveWider'),
        ),
      );
    }
    if (sample.noise > 0.12) {
      off += 2;
      own.push(problem('warning', 'patch-uneven', where(name), say('readings.patchUneven'), say('readings.markEven')));
    }
    const lab = labFromXyz(toXyz(lit(sample)).map((v) => Math.max(0.0005, v)) as unknown as Xyz);
    return { reading: { kind: 'photo' as const, lab, sigma: off }, problems: own };
  });
  // Nothing printed throws back more than a white diffuser, L* 100; glare and a picture's noise take little more.
  const tooLight = ask.patches.find((_, i) => patches[i].reading.lab[0] > mostLightness);
  if (tooLight) fail('paper-marked-wrong', where(tooLight.name), say('readings.lighterThanPaper'), say('readings.movePaperMarks'));
  const xyzAt: PhotoRead['xyzAt'] = (light, at) => toXyz(evened(light, at));
  return { patches, paper: labFromXyz(toXyz([1, 1, 1])), chartError, unevenness: even.unevenness, xyzAt, problems };
}

interface Evened {
  readonly level: (at: readonly [number, number]) => [number, number, number];
  readonly unevenness: number;
  readonly leftOver: number;
}

/** A low-order surface through the paper's light: a plane up to five places, with curvature from eight on. */
function evenOut(paper: readonly Sample[], width: number, height: number): Evened {
  const scale = 2 / Math.max(width, height);
  const terms = (at: readonly [number, number]): number[] => {
    const x = (at[0] - width / 2) * scale,
      y = (at[1] - height / 2) * scale;
    return paper.length >= 8 ? [1, x, y, x * x, x * y, y * y] : [1, x, y];
  };
  const surfaces = [0, 1, 2].map((c) => {
    const m = terms([0, 0]).length;
    const A = new Float64Array(m * m),
      b = new Float64Array(m);
    for (const s of paper) {
      const t = terms(s.centre);
      // Logarithms: lamps fall off by factors.
      const v = log(Math.max(1e-4, s.rgb[c]));
      for (let p = 0; p < m; p++) {
        b[p] += t[p] * v;
        for (let q = 0; q < m; q++) A[p * m + q] += t[p] * t[q];
      }
    }
    for (let p = 1; p < m; p++) A[p * m + p] += 1e-6;
    return solveDamped(A, b, 0);
  });
  const level = (at: readonly [number, number]): [number, number, number] => {
    const t = terms(at);
    return surfaces.map((s) => exp(t.reduce((sum, v, p) => sum + v * s[p], 0))) as [number, number, number];
  };
  const greens = paper.map((s) => s.rgb[1]);
  const leftOver = Math.max(...paper.map((s) => Math.abs(s.rgb[1] / level(s.centre)[1] - 1)));
  return { level, unevenness: Math.max(...greens) / Math.max(1e-6, Math.min(...greens)), leftOver };
}

/** Least squares RGB → XYZ on known patches; errors weighed so that dark patches count by what the eye sees. */
function fitMatrix(known: readonly { readonly rgb: readonly number[]; readonly xyz: Xyz }[]): (rgb: readonly number[]) => Xyz {
  const rows = [0, 1, 2].map((k) => {
    const A = new Float64Array(9),
      b = new Float64Array(3);
    for (const { rgb, xyz } of known) {
      const weight = 1 / pow(0.02 + xyz[1], 4 / 3);
      for (let p = 0; p < 3; p++) {
        b[p] += weight * rgb[p] * xyz[k];
        for (let q = 0; q < 3; q++) A[p * 3 + q] += weight * rgb[p] * rgb[q];
      }
    }
    return solveDamped(A, b, 1e-9);
  });
  return (rgb) => rows.map((row) => row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]) as unknown as Xyz;
}

/** The space's own matrix, its channels scaled so that the grey comes out right. */
function whiteBalanced(
  matrix: readonly (readonly [number, number, number])[],
  grey: { readonly rgb: readonly number[]; readonly xyz: Xyz },
): (rgb: readonly number[]) => Xyz {
  const A = Float64Array.from(matrix.flat());
  // Which light through the matrix gives the grey's XYZ: solve M · light = xyz by the normal equations.
  const N = new Float64Array(9),
    b = new Float64Array(3);
  for (let p = 0; p < 3; p++) {
    for (let k = 0; k < 3; k++) {
      b[p] += A[k * 3 + p] * grey.xyz[k];
      for (let q = 0; q < 3; q++) N[p * 3 + q] += A[k * 3 + p] * A[k * 3 + q];
    }
  }
  const light = solveDamped(N, b, 0);
  const gain = [0, 1, 2].map((c) => light[c] / Math.max(1e-4, grey.rgb[c]));
  return (rgb) => matrix.map((row) => row[0] * rgb[0] * gain[0] + row[1] * rgb[1] * gain[1] + row[2] * rgb[2] * gain[2]) as unknown as Xyz;
}
