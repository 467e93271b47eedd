import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import type { Bench } from '../../store/bench.ts';
import { words } from '../../store/words.ts';
import { bringPicture } from './edits.ts';

export function ChoosePicture({
  bench,
  strong = false,
  children,
}: {
  readonly bench: Bench;
  readonly strong?: boolean;
  readonly children: ComponentChildren;
}) {
  const chooser = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={chooser}
        type="file"
        accept="image/jpeg,image/png,image/webp,image/tiff,.tif,.tiff"
        class="unseen"
        tabindex={-1}
        aria-label={words().picture.choose}
        onChange={(e) => {
          const file = e.currentTarget.files?.[0];
          e.currentTarget.value = '';
          if (file) void bringPicture(bench, file);
        }}
      />
      <button type="button" class={`button ${strong ? 'button-strong' : 'button-line'}`} onClick={() => chooser.current?.click()}>
        {children}
      </button>
    </>
  );
}
