import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Quad, Reading } from '../../../../core/ink/index.ts';
import { ProblemError, type Problem } from '../../../../core/problem.ts';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import type { Bench } from '../../../store/bench.ts';
import { Slider } from '../../../ui/fields/Slider.tsx';
import { words } from '../../../store/words.ts';
import type { Answer } from '../../../engine/protocol.ts';
import { ReadingField } from './ReadingField.tsx';
import type { Slot } from '../shelf/slots.ts';
import { refuse, showReading } from '../state.ts';

interface Props {
  readonly bench: Bench;
  readonly photo: { readonly name: string; readonly bytes: Uint8Array };
  /** Patches to be marked. */
  readonly slots: readonly Slot[];
  readonly onRead: (read: Answer<'markedPhoto'>) => void;
}

interface Mark {
  readonly key: string;
  readonly label: string;
  readonly x: number;
  readonly y: number;
}

/** A photograph with marks to lay on its patches, by pointer or keys. */
export function MarkPhoto({ bench, photo, slots, onRead }: Props) {
  const w = words().inks;
  const picture = useRef<HTMLImageElement>(null);
  const url = useMemo(() => URL.createObjectURL(new Blob([photo.bytes as BlobPart])), [photo]);
  useEffect(() => () => URL.revokeObjectURL(url), [url]);
  const size = useSignal(6);
  const aspect = useSignal(1);
  const refused = useSignal<readonly Problem[]>([]);
  const grey = useSignal<Reading | null>(null);
  const marks = useSignal<readonly Mark[]>([
    ...(
      [
        [0.06, 0.06],
        [0.94, 0.06],
        [0.94, 0.94],
        [0.06, 0.94],
      ] as const
    ).map(([x, y], i) => ({ key: `paper-${i}`, label: w.markPaper(i + 1), x, y })),
    ...slots.map((s, i) => ({ key: s.key, label: s.label, x: (i + 1) / (slots.length + 1), y: 0.5 })),
    { key: 'grey', label: w.markGrey, x: 0.5, y: 0.9 },
  ]);
  const shown = marks.value.filter((m) => m.key !== 'grey' || grey.value !== null);
  const move = (key: string, x: number, y: number): void => {
    const within = (v: number): number => Math.min(0.995, Math.max(0.005, v));
    marks.value = marks.value.map((m) => (m.key === key ? { ...m, x: within(x), y: within(y) } : m));
  };
  const onKey = (mark: Mark, e: KeyboardEvent): void => {
    const by = ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] } as const)[e.key as 'ArrowLeft'];
    if (!by) return;
    e.preventDefault();
    const step = e.shiftKey ? 0.05 : 0.005;
    move(mark.key, mark.x + by[0] * step, mark.y + by[1] * step);
  };
  const onDrag = (mark: Mark, e: PointerEvent): void => {
    const box = picture.current?.getBoundingClientRect();
    if (box && (e.currentTarget as Element).hasPointerCapture(e.pointerId))
      move(mark.key, (e.clientX - box.left) / box.width, (e.clientY - box.top) / box.height);
  };
  const read = async (): Promise<void> => {
    const image = picture.current;
    if (!image?.naturalWidth) return;
    const { naturalWidth: width, naturalHeight: height } = image;
    const side = (size.value / 100) * Math.min(width, height);
    const quad = (m: Mark): Quad => {
      const x = m.x * width - side / 2,
        y = m.y * height - side / 2;
      return [
        [x, y],
        [x + side, y],
        [x + side, y + side],
        [x, y + side],
      ];
    };
    const of = (start: string): readonly Mark[] => marks.value.filter((m) => m.key.startsWith(start));
    refused.value = [];
    try {
      onRead(
        await bench.ask('markedPhoto', {
          bytes: photo.bytes,
          name: photo.name,
          paper: of('paper-').map(quad),
          ...(grey.value ? { grey: { quad: quad(of('grey')[0]), lab: showReading(grey.value).lab } } : {}),
          patches: slots.map((s) => ({ name: s.label, quad: quad(marks.value.find((m) => m.key === s.key)!) })),
        }),
      );
    } catch (error) {
      // Said where the hand is: the top of the page may be out of sight.
      if (error instanceof ProblemError) refused.value = error.problems;
      else refuse(bench, error);
    }
  };
  return (
    <div class="mark-photo">
      <p>{w.marksHelp}</p>
      <div class="marked" style={{ '--mark': String(size.value), '--aspect': String(aspect.value) }}>
        <img
          ref={picture}
          src={url}
          draggable={false}
          alt={w.photoOf(photo.name)}
          onLoad={(e) => {
            aspect.value = e.currentTarget.naturalWidth / Math.max(1, e.currentTarget.naturalHeight);
          }}
        />
        {shown.map((mark) => (
          <button
            key={mark.key}
            type="button"
            class="photo-mark"
            style={{ left: `${mark.x * 100}%`, top: `${mark.y * 100}%` }}
            aria-label={mark.label}
            onKeyDown={(e) => onKey(mark, e)}
            onPointerDown={(e) => e.currentTarget.setPointerCapture(e.pointerId)}
            onPointerMove={(e) => onDrag(mark, e)}
          >
            <i />
            <span>{mark.label}</span>
          </button>
        ))}
      </div>
      <div class="fields">
        <label class="length-field">
          <span class="length-label">{w.markSize}</span>
          <Slider
            label={w.markSize}
            value={size.value}
            min={1}
            max={20}
            step={0.5}
            text={`${size.value} %`}
            onMove={(v) => {
              size.value = v;
            }}
            onSettle={() => undefined}
          />
        </label>
        <ReadingField
          bench={bench}
          label={w.greyLab}
          reading={grey.value}
          onSet={(r) => {
            grey.value = r;
          }}
        />
      </div>
      {refused.value.length > 0 && (
        <div role="alert">
          <ProblemList problems={refused.value} />
        </div>
      )}
      <button type="button" class="button button-strong" onClick={() => void read()}>
        {w.readPhoto}
      </button>
    </div>
  );
}
