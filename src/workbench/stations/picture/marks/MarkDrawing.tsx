import { useRef } from 'preact/hooks';
import { type PictureMark, mostStrokePoints } from '../../../../core/job/index.ts';
import { markWeights, tidyShare, weightName } from '../../../../core/separate/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { addMark } from '../edits.ts';
import type { PicturePartProps } from '../part.ts';
import { brush, stroke } from '../state.ts';

interface Props extends Pick<PicturePartProps, 'picture' | 'read'> {
  readonly bench: Bench;
  readonly active: boolean;
}

/** What was marked on the picture, each kind of mark by its own hatching; a pointer paints more. */
export function MarkDrawing({ bench, picture, read, active }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const tall = read.height / read.width;
  // A picture width is 1000 units.
  const marks = stroke.value ? [...picture.important, stroke.value] : picture.important;

  const paint = (e: PointerEvent): void => {
    const element = svg.current;
    if (!active || e.button !== 0 || !element) return;
    e.preventDefault();
    element.setPointerCapture(e.pointerId);
    const box = element.getBoundingClientRect();
    const at = (event: PointerEvent): [number, number] => [
      tidyShare((event.clientX - box.left) / box.width),
      tidyShare((event.clientY - box.top) / box.height),
    ];
    stroke.value = { kind: 'stroke', weight: markWeights[brush.peek().weight], radius: brush.peek().radius, points: [at(e)] };
    const move = (event: PointerEvent): void => {
      const now = stroke.peek();
      if (!now) return;
      const next = at(event),
        last = now.points[now.points.length - 1];
      // Points nearer than a fifth of the brush say nothing new.
      if (now.points.length < mostStrokePoints && Math.hypot(next[0] - last[0], (next[1] - last[1]) * tall) > now.radius / 5)
        stroke.value = { ...now, points: [...now.points, next] };
    };
    const end = (event: PointerEvent): void => {
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', end);
      element.removeEventListener('pointercancel', end);
      const done = stroke.peek();
      stroke.value = null;
      if (done && event.type === 'pointerup') addMark(bench, done);
    };
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', end);
    element.addEventListener('pointercancel', end);
  };
  return (
    <svg
      ref={svg}
      class={`marks${active ? ' marks-active' : ''}`}
      viewBox={`0 0 1000 ${1000 * tall}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      onPointerDown={paint}
    >
      <defs>
        <pattern id="mark-more" width="14" height="14" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="14" height="14" fill="#fff" fill-opacity="0.55" />
          <rect width="6" height="14" fill="#000" />
        </pattern>
        <pattern id="mark-less" width="18" height="18" patternUnits="userSpaceOnUse">
          <rect width="18" height="18" fill="#fff" fill-opacity="0.35" />
          <circle cx="9" cy="9" r="3.5" fill="#000" />
        </pattern>
        <pattern id="mark-none" width="24" height="24" patternUnits="userSpaceOnUse">
          <rect width="24" height="24" fill="#000" fill-opacity="0.6" />
          <path d="M7 7L17 17M17 7L7 17" stroke="#fff" stroke-width="2.5" />
        </pattern>
      </defs>
      {marks.map((mark, i) => (
        <MarkShape key={i} mark={mark} tall={tall} />
      ))}
    </svg>
  );
}

function MarkShape({ mark, tall }: { readonly mark: PictureMark; readonly tall: number }) {
  const fill = `url(#mark-${weightName(mark.weight)})`;
  if (mark.kind === 'box')
    return <rect x={mark.x * 1000} y={mark.y * 1000 * tall} width={mark.width * 1000} height={mark.height * 1000 * tall} fill={fill} />;
  const d = mark.points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x * 1000} ${y * 1000 * tall}`).join('');
  // A stroke of one point is a dot.
  return (
    <path
      d={mark.points.length === 1 ? `${d}h0.01` : d}
      fill="none"
      stroke={fill}
      stroke-width={mark.radius * 2000}
      stroke-linecap="round"
      stroke-linejoin="round"
    />
  );
}
