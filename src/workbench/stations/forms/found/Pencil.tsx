import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { JobForm } from '../../../../core/job/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { step, words } from '../../../store/words.ts';
import { mmAt, type Mm } from '../../../ui/screen/drag.ts';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { freshId, freshName, newCut, newPart, withForm } from '../edits.ts';
import { inHand, takeForm } from '../state.ts';

/** Points nearer than this say nothing new. */
const leastStepMm = 0.3;
const keyStepMm = 2;

interface Drawn {
  readonly outline: [number, number][][];
  readonly minX: number;
  readonly minY: number;
}

/** A closed line drawn with finger, pen or keys on the image's area becomes a form, calmed so that a knife follows it with ease. */
export function Pencil({ bench }: { readonly bench: Bench }) {
  const w = words().forms;
  const job = bench.job.value!;
  const { widthMm, heightMm } = job.image;
  const line = useSignal<readonly Mm[]>([]);
  const drawn = useSignal<Drawn | null>(null);
  const smoothMm = useSignal(0.6);
  const pen = useSignal<Mm>([widthMm / 2, heightMm / 2]);
  const board = useRef<SVGSVGElement>(null);
  const calm = async (): Promise<void> => {
    const points = line.value;
    drawn.value = points.length < 3 ? null : await bench.ask('pencil', { points, smoothMm: smoothMm.value });
  };
  const inside = ([x, y]: Mm): Mm => [Math.max(0, Math.min(widthMm, x)), Math.max(0, Math.min(heightMm, y))];
  const down = (e: PointerEvent): void => {
    const svg = board.current;
    if (!svg || e.button !== 0) return;
    e.preventDefault();
    svg.setPointerCapture(e.pointerId);
    drawn.value = null;
    line.value = [inside(mmAt(svg, e.clientX, e.clientY))];
    const move = (event: PointerEvent): void => {
      if (event.pointerId !== e.pointerId) return;
      // A browser gathers several places of a fast pen in one event.
      const all = event.getCoalescedEvents?.() ?? [];
      const points = [...line.value];
      for (const one of all.length > 0 ? all : [event]) {
        const at = inside(mmAt(svg, one.clientX, one.clientY));
        const last = points[points.length - 1];
        if (Math.hypot(at[0] - last[0], at[1] - last[1]) >= leastStepMm) points.push(at);
      }
      line.value = points;
    };
    const end = (event: PointerEvent): void => {
      if (event.pointerId !== e.pointerId) return;
      svg.removeEventListener('pointermove', move);
      svg.removeEventListener('pointerup', end);
      svg.removeEventListener('pointercancel', end);
      void calm();
    };
    svg.addEventListener('pointermove', move);
    svg.addEventListener('pointerup', end);
    svg.addEventListener('pointercancel', end);
  };
  const keys = (e: KeyboardEvent): void => {
    const far = e.shiftKey ? 5 : 1;
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    if (way) {
      e.preventDefault();
      pen.value = inside([pen.value[0] + way[0] * keyStepMm * far, pen.value[1] + way[1] * keyStepMm * far]);
    } else if (e.key === ' ' || e.key === 'Enter') {
      e.preventDefault();
      line.value = [...line.value, pen.value];
      void calm();
    } else if (e.key === 'Backspace') {
      e.preventDefault();
      line.value = line.value.slice(0, -1);
      void calm();
    }
  };
  const clear = (): void => {
    line.value = [];
    drawn.value = null;
  };
  const keep = (): void => {
    const shape = drawn.value;
    const now = bench.job.peek();
    if (!shape || shape.outline.length === 0 || !now) return;
    const name = freshName(now.forms, w.pencilName);
    const form: JobForm = { id: freshId(now.forms, name), name, outline: shape.outline };
    const xs = shape.outline.flat().map((p) => p[0]),
      ys = shape.outline.flat().map((p) => p[1]);
    const part = newPart(form.id, shape.minX + Math.max(...xs) / 2, shape.minY + Math.max(...ys) / 2);
    if (now.cuts.length === 0) {
      const made = newCut(withForm(now, form), name, part);
      bench.edit(step('bringForm', name), () => made.job);
      inHand.value = { cutId: made.id, part: 0, formId: null };
    } else {
      bench.edit(step('bringForm', name), (j) => withForm(j, form));
      takeForm(form.id);
    }
    bench.announce(w.brought(name));
    clear();
  };
  const path = (points: readonly Mm[]): string => points.map((p) => p.join(' ')).join('L');
  const shape = drawn.value;
  return (
    <details class="fold">
      <summary>{w.pencil}</summary>
      <p>{w.pencilHow}</p>
      <svg
        ref={board}
        class="pencil-board"
        viewBox={`0 0 ${widthMm} ${heightMm}`}
        role="application"
        aria-label={w.pencilBoard(line.value.length)}
        tabindex={0}
        onPointerDown={down}
        onKeyDown={keys}
      >
        {shape && shape.outline.length > 0 && (
          <path
            class="pencil-shape"
            fill-rule="evenodd"
            transform={`translate(${shape.minX} ${shape.minY})`}
            d={shape.outline.map((ring) => `M${path(ring)}Z`).join('')}
          />
        )}
        {line.value.length > 1 && <path class="pencil-line" d={`M${path(line.value)}${shape ? 'Z' : ''}`} />}
        <path class="pencil-point" d={`M${pen.value[0] - 3} ${pen.value[1]}h6M${pen.value[0]} ${pen.value[1] - 3}v6`} />
      </svg>
      <div class="row">
        <label class="num">
          <span>{w.smooth}</span>
          <LengthField
            label={w.smooth}
            valueMm={smoothMm.value}
            minMm={0}
            maxMm={10}
            units={job.units}
            onSet={(v) => {
              smoothMm.value = v;
              void calm();
            }}
          />
        </label>
        <button type="button" class="button button-strong" disabled={!shape || shape.outline.length === 0} onClick={keep}>
          {w.makeForm}
        </button>
        <button type="button" class="button button-line" disabled={line.value.length === 0} onClick={clear}>
          {w.pencilClear}
        </button>
      </div>
    </details>
  );
}
