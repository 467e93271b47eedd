import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { askOverPicture } from './over-picture.ts';
import type { Illuminant } from '../../../core/colour/index.ts';
import type { Bench } from '../../store/bench.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { paintSoon } from './paint-line.ts';
import { printedScale } from './print-scale.ts';
import { dimPalette, dimWord, paintSamples, pixelAt, printedMask, sampleCodes } from './proof-pixels.ts';

/** What a proof is painted from: a Plan, or the print as it is drawn. */
export type SeenPlan = Pick<ShownPlan, 'job' | 'codes'> & Parameters<typeof printedMask>[0];
export type SeenPaper = Pick<ShownPaper, 'id' | 'palette' | 'progressive'> & Partial<Pick<ShownPaper, 'overPicture'>>;

interface Props {
  readonly bench: Bench;
  readonly plan: SeenPlan;
  readonly paper: SeenPaper;
  /** After so many runs; all when left out. 0: the bare sheet. */
  readonly runs?: number;
  /** As on this sheet of `register.draws`; `plan.codes` must be that sheet's too (`sheetCodes`). Left out: in register. */
  readonly sheet?: number;
  /** The lamp that `paper` is shown under (`underLamp`), for the worker; left out: D50. */
  readonly lamp?: Illuminant;
  /** The plan is of the other version that is compared, not of the job on the bench. */
  readonly other?: boolean;
  /** Code of the one overlap to keep in colour. */
  readonly only?: number | null;
  readonly label: string;
  /** Called with the code under the pointer (open layers left out), null when it leaves; `held` on a press; `pixel` of `plan.codes`. */
  readonly onPoint?: (code: number | null, held: boolean, pixel: number | null) => void;
}

/** A proof of fewer pixels is one of many along a rack. */
const smallPx = 60_000;

/** The proof at the resolution of the screen. Fills its box, which keeps the image's proportions. */
export function ProofCanvas({ bench, plan, paper, runs, sheet, lamp = 'D50', other = false, only = null, label, onPoint }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [[width, height], setSize] = useState<readonly [number, number]>([0, 0]);

  useLayoutEffect(() => {
    const element = canvas.current!;
    const measure = (): void => {
      const scale = globalThis.devicePixelRatio || 1;
      const next = [Math.round(element.clientWidth * scale), Math.round(element.clientHeight * scale)] as const;
      setSize((now) => (now[0] === next[0] && now[1] === next[1] ? now : next));
    };
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    measure();
    return () => watch.disconnect();
  }, []);

  const { codes } = plan;
  const palette =
    runs === undefined
      ? paper.palette
      : runs === 0
        ? barePalette(paper)
        : (paper.progressive[Math.min(runs, paper.progressive.length) - 1] ?? paper.palette);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || width === 0 || height === 0) return;
    const forPaper = paintForPaper.bind(null, context, plan, paper, palette, only);
    addEventListener('beforeprint', forPaper);
    // The large proof is painted at once; the small ones along the rack follow in tasks of their own.
    const stop = width * height < smallPx ? paintSoon(context.canvas, () => paintScreen(context)) : paintScreen(context);
    const back = (): void => {
      paintScreen(context);
    };
    addEventListener('afterprint', back);
    return () => {
      removeEventListener('beforeprint', forPaper);
      removeEventListener('afterprint', back);
      stop?.();
    };
  }, [codes, palette, paper, only, width, height, runs, sheet]);

  function paintScreen(context: CanvasRenderingContext2D): (() => void) | undefined {
    // Setting the size clears a canvas: only when it changes, or the proof would blink.
    if (context.canvas.width !== width) context.canvas.width = width;
    if (context.canvas.height !== height) context.canvas.height = height;
    const image = context.createImageData(width, height);
    const out = new Uint32Array(image.data.buffer);
    const mask = printedMask(plan);
    const per = width * height < smallPx ? 4 : 2;
    if (!paper.overPicture) {
      paintSamples(sampleCodes(codes, width, height, per), only === null ? palette : dimPalette(palette, mask, only), out);
      context.putImageData(image, 0, 0);
      return;
    }
    return askOverPicture(
      bench,
      {
        paperId: paper.id,
        width,
        height,
        ...(runs === undefined ? {} : { runs }),
        ...(sheet === undefined ? {} : { sheet }),
        ...(lamp === 'D50' ? {} : { lamp }),
        ...(other && { other }),
      },
      per > 2,
      (words) => {
        const under = only === null ? null : sampleCodes(codes, width, height, 1).data;
        for (let i = 0; i < out.length; i++) out[i] = under === null || (under[i] & mask) === only ? words[i] : dimWord(words[i]);
        context.putImageData(image, 0, 0);
      },
    );
  }

  const point = (event: PointerEvent, held: boolean): void => {
    const box = canvas.current!.getBoundingClientRect();
    const at = pixelAt(codes, (event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height);
    onPoint?.(codes.data[at] & printedMask(plan), held, at);
  };
  return (
    <canvas
      ref={canvas}
      class="proof-canvas"
      role="img"
      aria-label={label}
      {...(onPoint && {
        onPointerMove: (e: PointerEvent) => point(e, false),
        onPointerDown: (e: PointerEvent) => point(e, true),
        onPointerLeave: () => onPoint(null, false, null),
      })}
    />
  );
}

/** Enough for the eye at arm's length; a laydown of A3 stays within what a browser gives a canvas. */
const paperPixelsPerInch = 200;

/** A proof that is printed at true size gets the pixels for it, before the browser lays the page out. Over an earlier print it stays as on the screen. */
function paintForPaper(
  context: CanvasRenderingContext2D,
  plan: SeenPlan,
  paper: SeenPaper,
  palette: Uint32Array,
  only: number | null,
): void {
  if (paper.overPicture || !context.canvas.closest('.proof-figure > .proof-sheet')) return;
  const { widthMm, heightMm } = plan.job.image;
  const per = (printedScale(widthMm, heightMm) * paperPixelsPerInch) / 25.4;
  const [width, height] = [Math.round(widthMm * per), Math.round(heightMm * per)];
  context.canvas.width = width;
  context.canvas.height = height;
  const image = context.createImageData(width, height);
  paintSamples(
    sampleCodes(plan.codes, width, height, 2),
    only === null ? palette : dimPalette(palette, printedMask(plan), only),
    new Uint32Array(image.data.buffer),
  );
  context.putImageData(image, 0, 0);
}

const bare = new WeakMap<SeenPaper, Uint32Array>();
function barePalette(paper: SeenPaper): Uint32Array {
  let palette = bare.get(paper);
  if (!palette) bare.set(paper, (palette = new Uint32Array(256).fill(paper.palette[0])));
  return palette;
}
