import type { JobScreen } from '../../../../../core/job/index.ts';
import { sayLength } from '../../../../ui/fields/units.ts';
import type { ShownPlan } from '../../../../engine/protocol.ts';
import { words } from '../../../../store/words.ts';

const tall = 10;

/** A cut through the press from the hinge to the front: what lies on what, heights ten times as large. */
export function GapPicture({ plan, screen }: { readonly plan: ShownPlan; readonly screen: JobScreen }) {
  const w = words().press;
  const { press, job } = plan;
  const { risers, fit, gapMm } = press;
  const alongY = fit?.strokeAxis !== 'x';
  const length = alongY ? screen.insideHeightMm : screen.insideWidthMm;
  const image = alongY ? job.image.heightMm : job.image.widthMm;
  const at = fit ? (alongY ? fit.imageAtMm[1] : fit.imageAtMm[0]) : (length - image) / 2;
  const near = screen.hinge === 'top' || screen.hinge === 'left' ? at : length - at - image;
  const sheet = Math.max(image, ...job.papers.map((p) => (alongY ? p.heightMm : p.widthMm)));
  const paperMm = Math.max(0.05, ...job.papers.map((p) => p.thicknessMm));
  const stencilMm = Math.max(0.05, ...job.materials.map((m) => m.thicknessMm));
  const packed = risers?.built.underPaperMm ?? 0;
  const top = packed + paperMm;
  const hinge = risers ? (screen.hingeLiftMm ?? 0) + risers.built.underHingeMm : top + gapMm + stencilMm;
  const front = risers ? risers.built.frontMm : hinge;
  const size = length / 26;
  const bar = length * 0.05;
  const high = Math.max(hinge, front, top + gapMm + stencilMm) * tall + size * 3.4;
  const y = (mm: number): number => -mm * tall;
  const meshAt = (x: number): number => hinge + ((front - hinge) * x) / length;
  const boards = risers?.layers[0];
  const say = (mm: number): string => sayLength(mm, job.units);
  const gapMark = (x: number, anchor: 'start' | 'end') => (
    <g>
      <line class="measure" x1={x} y1={y(top)} x2={x} y2={y(meshAt(x) - stencilMm)} />
      <text
        class="measured"
        x={x + (anchor === 'start' ? 1 : -1) * size * 0.4}
        y={y((top + meshAt(x) - stencilMm) / 2) + size * 0.35}
        font-size={size}
        text-anchor={anchor}
      >
        {say(meshAt(x) - stencilMm - top)}
      </text>
    </g>
  );
  return (
    <svg
      class="gap-picture"
      viewBox={`${-bar * 1.6} ${-high} ${length + bar * 3.2} ${high + size * 2.4}`}
      role="img"
      aria-label={w.gapPicture}
    >
      <rect class="board" x={-bar * 1.6} y={0} width={length + bar * 3.2} height={size * 0.9} />
      {packed > 0 && <rect class="packing" x={near + image / 2 - sheet / 2} y={y(packed)} width={sheet} height={packed * tall} />}
      <rect class="sheet-edge" x={near + image / 2 - sheet / 2} y={y(top)} width={sheet} height={paperMm * tall} />
      {boards && boards.count > 0
        ? Array.from({ length: boards.count }, (_, i) => (
            <rect
              key={i}
              class="packing"
              x={length - bar * 0.2}
              y={y((i + 1) * boards.thicknessMm)}
              width={bar * 1.4}
              height={boards.thicknessMm * tall}
            />
          ))
        : risers && <rect class="packing" x={length - bar * 0.2} y={y(front)} width={bar * 1.4} height={front * tall} />}
      <rect class="clamp" x={-bar * 1.2} y={y(hinge)} width={bar * 1.2} height={hinge * tall} />
      <polygon class="frame-bar" points={`${-bar},${y(hinge)} 0,${y(hinge)} 0,${y(hinge) - size * 1.6} ${-bar},${y(hinge) - size * 1.6}`} />
      <polygon
        class="frame-bar"
        points={`${length},${y(front)} ${length + bar},${y(front)} ${length + bar},${y(front) - size * 1.6} ${length},${y(front) - size * 1.6}`}
      />
      <line
        class="stencil-line"
        x1={near * 0.3}
        y1={y(meshAt(near * 0.3) - stencilMm / 2)}
        x2={length - (length - near - image) * 0.3}
        y2={y(meshAt(length - (length - near - image) * 0.3) - stencilMm / 2)}
        stroke-width={stencilMm * tall}
      />
      <line class="mesh-line" x1={0} y1={y(hinge)} x2={length} y2={y(front)} stroke-width={size * 0.12} />
      {gapMark(near, 'end')}
      {gapMark(near + image, 'start')}
      {risers && (
        <text class="measured" x={length + bar * 0.5} y={size * 2.2} font-size={size} text-anchor="middle">
          {say(front)}
        </text>
      )}
      <text class="measured" x={-bar * 1.5} y={y(hinge) - size * 2} font-size={size}>
        {w.atHinge}
      </text>
      <text class="measured" x={length + bar * 1.5} y={y(front) - size * 2} font-size={size} text-anchor="end">
        {w.atFront}
      </text>
    </svg>
  );
}
