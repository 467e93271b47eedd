import type { JobScreen } from '../../../../../core/job/index.ts';
import type { ScreenFit } from '../../../../../core/press/index.ts';
import { sayLength, saySize } from '../../../../ui/fields/units.ts';
import type { Bench } from '../../../../store/bench.ts';
import { ProofCanvas } from '../../../../ui/proof/ProofCanvas.tsx';
import type { ShownPlan } from '../../../../engine/protocol.ts';
import { words } from '../../../../store/words.ts';

interface Props {
  readonly bench: Bench;
  readonly plan: ShownPlan;
  readonly fit: ScreenFit;
  readonly screen: JobScreen;
}

/** The screen from above, to scale: frame, mesh, the print where it lies, the room around it, squeegee, stroke and hinge. */
export function FitPicture({ bench, plan, fit, screen }: Props) {
  const w = words().press;
  const { units, image } = plan.job;
  const paper = bench.paper.value;
  const [width, height] = [screen.insideWidthMm, screen.insideHeightMm];
  const [x, y] = fit.imageAtMm;
  // An image larger than its frame is drawn as it is: sticking out.
  const bar = Math.max(width, height) * 0.06;
  const out = {
    left: Math.max(bar, -x + bar / 2),
    top: Math.max(bar, -y + bar / 2),
    right: Math.max(bar, x + image.widthMm - width + bar / 2),
    bottom: Math.max(bar, y + image.heightMm - height + bar / 2),
  };
  const whole = [width + out.left + out.right, height + out.top + out.bottom] as const;
  const share = (mm: number, of: 0 | 1): string => `${(100 * mm) / whole[of]}%`;
  const size = whole[0] / 27;
  const blade = fit.squeegee.ownMm ?? fit.squeegee.bestMm;
  const middle = [x + image.widthMm / 2, y + image.heightMm / 2] as const;
  const turned = fit.strokeAxis === 'x';
  const fromFar = screen.hinge === 'top' || screen.hinge === 'left';
  // The blade stands in the well at the hinge, where the stroke begins.
  const [start, length] = turned ? [x, image.widthMm] : [y, image.heightMm];
  const bladeAt = fromFar ? start - size * 1.1 : start + length + size * 1.1;
  const bladeRect = turned
    ? { x: bladeAt - size / 3, y: middle[1] - blade / 2, width: size / 1.5, height: blade }
    : { x: middle[0] - blade / 2, y: bladeAt - size / 3, width: blade, height: size / 1.5 };
  const clamps = [0.25, 0.75].map((at) =>
    turned
      ? { x: screen.hinge === 'left' ? -bar * 1.1 : width - bar * 0.1, y: height * at - bar / 2, width: bar * 1.2, height: bar }
      : { x: width * at - bar / 2, y: screen.hinge === 'top' ? -bar * 1.1 : height - bar * 0.1, width: bar, height: bar * 1.2 },
  );
  return (
    <div
      class="fit-picture"
      style={{ '--ratio': String(whole[0] / whole[1]) }}
      role="img"
      aria-label={w.fitPicture(saySize(width, height, units), saySize(image.widthMm, image.heightMm, units))}
    >
      <svg viewBox={`${-out.left} ${-out.top} ${whole[0]} ${whole[1]}`} aria-hidden="true">
        <rect class="frame-bar" x={-bar} y={-bar} width={width + 2 * bar} height={height + 2 * bar} />
        <rect class="frame-mesh" width={width} height={height} />
        {clamps.map((rect, i) => (
          <rect key={i} class="clamp" {...rect} />
        ))}
      </svg>
      <div
        class="fit-image"
        aria-hidden="true"
        style={{
          left: share(x + out.left, 0),
          top: share(y + out.top, 1),
          width: share(image.widthMm, 0),
          height: share(image.heightMm, 1),
          background: paper?.swatch.srgb ?? '#d9d9d9',
        }}
      >
        {paper && <ProofCanvas bench={bench} plan={plan} paper={paper} label="" />}
      </div>
      <svg viewBox={`${-out.left} ${-out.top} ${whole[0]} ${whole[1]}`} aria-hidden="true">
        <rect class="blade" {...bladeRect} />
        {fit.margins.map((margin) => {
          const along = margin.side === 'left' || margin.side === 'right';
          const from = {
            top: [middle[0], 0],
            bottom: [middle[0], y + image.heightMm],
            left: [0, middle[1]],
            right: [x + image.widthMm, middle[1]],
          }[margin.side];
          const to = { top: [middle[0], y], bottom: [middle[0], height], left: [x, middle[1]], right: [width, middle[1]] }[margin.side];
          const text = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
          const short = margin.missingMm > 0;
          return (
            <g key={margin.side}>
              <line class={short ? 'measure measure-short' : 'measure'} x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
              <text
                class="measured"
                x={text[0]}
                y={text[1] + (along ? -size * 0.35 : size * 0.35)}
                font-size={size}
                text-anchor={along ? 'middle' : 'start'}
                dx={along ? 0 : size * 0.4}
              >
                {sayLength(margin.mm, units)}
              </text>
              {short && (
                <text
                  class="measured measured-short"
                  x={text[0]}
                  y={text[1] + (along ? size * 0.95 : size * 1.45)}
                  font-size={size * 0.8}
                  text-anchor={along ? 'middle' : 'start'}
                  dx={along ? 0 : size * 0.4}
                >
                  {w.missing(sayLength(margin.missingMm, units))}
                </text>
              )}
            </g>
          );
        })}
      </svg>
    </div>
  );
}
