import type { ComponentChildren } from 'preact';
import type { InkSheet } from '../../../../core/asks/index.ts';
import { sayNumber } from '../../../ui/fields/units.ts';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';

interface Props {
  readonly name: string;
  readonly sheet: InkSheet;
}

/** An ink's curves as plots: spectrum at several strengths, K and S, lightness against strength. */
export function Curves({ name, sheet }: Props) {
  const w = words().inks;
  const { curves } = sheet;
  const most = Math.max(0.5, ...curves.k, ...curves.s);
  const top = most <= 1 ? 1 : Math.ceil(most);
  return (
    <div class="curves">
      <figure>
        <figcaption>
          <b>{w.spectrum}</b>
          <Why of={w.spectrum}>{w.curvesWhy}</Why>
        </figcaption>
        <Plot
          label={w.spectrumLabel(name)}
          x={[380, 730]}
          xTicks={[400, 500, 600, 700]}
          xUnit={w.nm}
          y={[0, 100]}
          yTicks={[0, 50, 100]}
          yUnit="%"
        >
          {(at) =>
            curves.strengths.toReversed().map((s) => (
              <g key={s.share}>
                <path class="plot-under" d={path(curves.wavelengthsNm.map((nm, i) => at(nm, s.reflectance[i] * 100)))} />
                <path
                  class="plot-line"
                  style={{ stroke: s.srgb }}
                  d={path(curves.wavelengthsNm.map((nm, i) => at(nm, s.reflectance[i] * 100)))}
                />
              </g>
            ))
          }
        </Plot>
      </figure>
      <figure>
        <figcaption>
          <b>{w.ks}</b>
          <Why of={w.ks}>{w.ksWhy}</Why>
          <span class="plot-key">
            <span>
              <i class="key-solid" />
              {w.takes}
            </span>
            <span>
              <i class="key-dashed" />
              {w.throws}
            </span>
          </span>
        </figcaption>
        <Plot
          label={w.ksLabel(name)}
          x={[380, 730]}
          xTicks={[400, 500, 600, 700]}
          xUnit={w.nm}
          y={[0, top]}
          yTicks={[0, top / 2, top]}
          yUnit=""
        >
          {(at) => (
            <>
              <path class="plot-black" d={path(curves.wavelengthsNm.map((nm, i) => at(nm, curves.k[i])))} />
              <path class="plot-black plot-dashed" d={path(curves.wavelengthsNm.map((nm, i) => at(nm, curves.s[i])))} />
            </>
          )}
        </Plot>
      </figure>
      <figure>
        <figcaption>
          <b>{w.growth}</b>
          {sheet.gamma !== 1 && <span>{w.growthSays(sayNumber(sheet.gamma, 2, true))}</span>}
        </figcaption>
        <Plot
          label={w.growthLabel(name)}
          x={[0, 100]}
          xTicks={[0, 25, 50, 100]}
          xUnit="%"
          y={[0, 100]}
          yTicks={[0, 50, 100]}
          yUnit={w.lightness}
        >
          {(at) => {
            const dots = curves.strengths.map((s) => ({ at: at(s.share * 100, s.lab[0]), srgb: s.srgb }));
            return (
              <>
                <path class="plot-black" d={path(dots.map((d) => d.at))} />
                {dots.map((d) => (
                  <circle key={d.at[0]} class="plot-dot" cx={d.at[0]} cy={d.at[1]} r="9" style={{ fill: d.srgb }} />
                ))}
              </>
            );
          }}
        </Plot>
      </figure>
    </div>
  );
}

interface PlotProps {
  readonly label: string;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  readonly xUnit: string;
  readonly yUnit: string;
  readonly children: (at: (x: number, y: number) => readonly [number, number]) => ComponentChildren;
}

const box = { left: 46, top: 12, width: 300, height: 150 };

function Plot({ label, x, y, xTicks, yTicks, xUnit, yUnit, children }: PlotProps) {
  const at = (vx: number, vy: number): readonly [number, number] => [
    box.left + (box.width * (vx - x[0])) / (x[1] - x[0]),
    box.top + box.height * (1 - (Math.min(y[1], Math.max(y[0], vy)) - y[0]) / (y[1] - y[0])),
  ];
  return (
    <svg class="plot" viewBox="0 0 372 196" role="img" aria-label={label}>
      <rect class="plot-field" x={box.left} y={box.top} width={box.width} height={box.height} />
      {yTicks.map((t) => (
        <g key={t}>
          <line class="plot-grid" x1={box.left} x2={box.left + box.width} y1={at(x[0], t)[1]} y2={at(x[0], t)[1]} />
          <text class="plot-text" text-anchor="end" x={box.left - 6} y={at(x[0], t)[1] + 5}>
            {sayNumber(t, t % 1 === 0 ? 0 : 1, true)}
            {t === yTicks[yTicks.length - 1] && yUnit ? ` ${yUnit}` : ''}
          </text>
        </g>
      ))}
      {xTicks.map((t) => (
        <g key={t}>
          <line class="plot-grid" y1={box.top} y2={box.top + box.height} x1={at(t, y[0])[0]} x2={at(t, y[0])[0]} />
          <text class="plot-text" text-anchor="middle" x={at(t, y[0])[0]} y={box.top + box.height + 20}>
            {t}
            {t === xTicks[xTicks.length - 1] ? ` ${xUnit}` : ''}
          </text>
        </g>
      ))}
      {children(at)}
    </svg>
  );
}

function path(points: readonly (readonly [number, number])[]): string {
  return points.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${px.toFixed(1)} ${py.toFixed(1)}`).join('');
}
