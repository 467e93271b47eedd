import { useEffect, useMemo, useRef } from 'preact/hooks';
import { useSignal } from '@preact/signals';
import type { Lab } from '../../../../core/colour/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { words } from '../../../store/words.ts';
import { refuse } from '../state.ts';

interface Props {
  readonly bench: Bench;
  readonly photo: { readonly name: string; readonly bytes: Uint8Array };
  readonly onPick: (lab: Lab) => void;
}

/** A photograph with one mark to put on the colour; by pointer, touch or arrow keys. */
export function PickOnPhoto({ bench, photo, onPick }: Props) {
  const w = words().inks;
  const picture = useRef<HTMLImageElement>(null);
  const url = useMemo(() => URL.createObjectURL(new Blob([photo.bytes as BlobPart])), [photo]);
  useEffect(() => () => URL.revokeObjectURL(url), [url]);
  const aspect = useSignal(1);
  const mark = useSignal<readonly [number, number]>([0.5, 0.5]);
  const read = async (x: number, y: number): Promise<void> => {
    const within = (v: number): number => Math.min(0.99, Math.max(0.01, v));
    mark.value = [within(x), within(y)];
    try {
      const { lab } = await bench.ask('pictureColour', { bytes: photo.bytes, name: photo.name, x: mark.value[0], y: mark.value[1] });
      onPick(lab);
    } catch (error) {
      refuse(bench, error);
    }
  };
  return (
    <div class="mark-photo">
      <p>{w.pickHelp}</p>
      <div
        class="marked pick-picture"
        style={{ '--mark': '3', '--aspect': String(aspect.value) }}
        role="application"
        tabindex={0}
        aria-label={w.pickOn(photo.name)}
        onPointerDown={(e) => {
          const box = picture.current?.getBoundingClientRect();
          if (box) void read((e.clientX - box.left) / box.width, (e.clientY - box.top) / box.height);
        }}
        onKeyDown={(e) => {
          const by = ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] } as const)[e.key as 'ArrowLeft'];
          if (!by) return;
          e.preventDefault();
          const far = e.shiftKey ? 0.05 : 0.01;
          void read(mark.value[0] + by[0] * far, mark.value[1] + by[1] * far);
        }}
      >
        <img
          ref={picture}
          src={url}
          alt=""
          draggable={false}
          onLoad={(e) => {
            aspect.value = e.currentTarget.naturalWidth / Math.max(1, e.currentTarget.naturalHeight);
            void read(0.5, 0.5);
          }}
        />
        <span class="photo-mark pick-mark" style={{ left: `${mark.value[0] * 100}%`, top: `${mark.value[1] * 100}%` }}>
          <i />
        </span>
      </div>
    </div>
  );
}
