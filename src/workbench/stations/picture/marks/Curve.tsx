import type { Job, JobPicture } from '../../../../core/job/index.ts';
import { sayNumber } from '../../../ui/fields/units.ts';
import type { Bench } from '../../../store/bench.ts';
import { sayDelta } from '../../../ui/fields/format.ts';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';
import { setPicture } from '../edits.ts';
import { sayKnife } from '../say.ts';
import { isStale, make, making } from '../state.ts';
import type { ShownSeparation } from '../worker/protocol.ts';

interface Props {
  readonly bench: Bench;
  readonly job: Job;
  readonly picture: JobPicture;
  readonly result: ShownSeparation;
}

/** Error against metres of knife; a touch on a point makes the stencils again with that many metres. */
export function Curve({ bench, job, picture, result }: Props) {
  const w = words().picture;
  const { units } = job;
  // Along the image's border these stencils are cut as well; those of the curve are taken to be so too.
  const borderMetres = Math.max(0, result.figures.knifeMetres - result.figures.metres);
  const place = (metres: number, meanDeltaE: number): Place => ({ metres: metres + borderMetres, meanDeltaE });
  const points = result.curve.filter((p) => p.metres > 0).map((p) => place(p.metres, p.meanDeltaE));
  if (points.length < 2) return null;
  const here = place(result.figures.metres, result.figures.inRegister.mean);
  const flat = place(result.flatFigures.metres, result.flatFigures.inRegister.mean);
  const all = [...points, here, flat].filter((p) => p.metres > 0);
  // Metres by logarithm: halving the knife is the same step everywhere, and points stand apart for a thumb.
  const logs = all.map((p) => Math.log(p.metres));
  const [lowX, highX] = [Math.min(...logs) - 0.15, Math.max(...logs) + 0.15];
  const highY = Math.max(...all.map((p) => p.meanDeltaE)) * 1.15;
  const x = (metres: number): number => ((Math.log(metres) - lowX) / (highX - lowX)) * 100;
  const y = (deltaE: number): number => 100 - (deltaE / highY) * 100;
  // By the edge of a narrow screen a name stands to the right of its mark's left side.
  const near = (metres: number): string => (x(metres) < 25 ? ' curve-by-edge' : '');
  const steps = [1, 2, 5, 10, 20].find((s) => highY / s <= 5) ?? 20;
  // Points too near to each other for a thumb are left out.
  const shown = points.filter(apart(points.map((p) => x(p.metres))));
  const again = (metres: number): void => {
    setPicture(bench, 'metres', { knife: { ...picture.knife, metres: Math.round(metres * 100) / 100, priceMm: undefined } });
    void make(bench);
  };
  return (
    <section class="curve" aria-label={w.curve}>
      <h2>
        {w.curve}
        <Why of={w.curve}>{w.curveWhy}</Why>
      </h2>
      <p class="field-note">{w.curveHint}</p>
      {picture.knife.metres !== undefined && result.figures.knifeMetres < 0.8 * picture.knife.metres && !isStale(bench, making.value!) && (
        <p class="needs-line">{w.curveLess(sayKnife(result.figures.knifeMetres, units))}</p>
      )}
      <div class="curve-plot">
        <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
          {Array.from({ length: Math.floor(highY / steps) + 1 }, (_, i) => (
            <path key={i} class="curve-grid" d={`M0 ${y(i * steps)}H100`} />
          ))}
          <path class="curve-line" d={points.map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p.metres)} ${y(p.meanDeltaE)}`).join('')} />
        </svg>
        {Array.from({ length: Math.floor(highY / steps) }, (_, i) => (
          <span key={i} class="curve-tick" aria-hidden="true" style={{ top: `${y((i + 1) * steps)}%` }}>
            {sayNumber((i + 1) * steps, 0, false)}
          </span>
        ))}
        <span class={`curve-mark curve-flat${near(flat.metres)}`} style={{ left: `${x(flat.metres)}%`, top: `${y(flat.meanDeltaE)}%` }}>
          <small>{w.curveFlat}</small>
        </span>
        <span class={`curve-mark curve-here${near(here.metres)}`} style={{ left: `${x(here.metres)}%`, top: `${y(here.meanDeltaE)}%` }}>
          <small>{w.curveHere}</small>
        </span>
        {shown.map((p) => (
          <button
            key={p.metres}
            type="button"
            class="curve-point"
            aria-label={w.curvePoint(sayKnife(p.metres, units), sayDelta(p.meanDeltaE))}
            title={w.curvePoint(sayKnife(p.metres, units), sayDelta(p.meanDeltaE))}
            style={{ left: `${x(p.metres)}%`, top: `${y(p.meanDeltaE)}%` }}
            onClick={() => again(p.metres)}
          />
        ))}
      </div>
      <ol class="curve-feet" aria-hidden="true">
        {shown.map((p) => (
          <li key={p.metres} style={{ left: `${x(p.metres)}%` }}>
            {sayKnife(p.metres, units)}
          </li>
        ))}
      </ol>
      <p class="field-note">
        {w.curveUp} ↑, {w.curveAcross} →
      </p>
    </section>
  );
}

interface Place {
  readonly metres: number;
  readonly meanDeltaE: number;
}

/** Which of some places in percent, in their order, are far enough from those kept before. */
function apart(places: readonly number[], least = 11): (_: unknown, i: number) => boolean {
  const kept: number[] = [];
  const keep = places.map((at) => kept.every((other) => Math.abs(other - at) >= least) && kept.push(at) > 0);
  return (_, i) => keep[i];
}
