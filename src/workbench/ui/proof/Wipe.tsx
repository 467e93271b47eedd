import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { Slider } from '../fields/Slider.tsx';
import { words } from '../../store/words.ts';

/** Two proofs on one another; the upper one is drawn back by a slider under them, or by a pointer on the print. */
export function Wipe({
  ratio,
  over,
  under,
  share: at,
}: {
  readonly ratio: number;
  readonly over: ComponentChildren;
  readonly under: ComponentChildren;
  /** How much of the upper one is seen, 0..1. */
  readonly share: Signal<number>;
}) {
  const w = words().compare;
  const share = at.value;
  const follow = (e: PointerEvent & { readonly currentTarget: HTMLElement }): void => {
    const box = e.currentTarget.getBoundingClientRect();
    at.value = Math.min(1, Math.max(0, (e.clientX - box.left) / box.width));
  };
  return (
    <div class="versus-wipe" style={{ '--ratio': String(ratio) }}>
      <div
        class="versus-stack"
        onPointerDown={(e) => {
          e.currentTarget.setPointerCapture(e.pointerId);
          follow(e);
        }}
        onPointerMove={(e) => {
          if (e.currentTarget.hasPointerCapture(e.pointerId)) follow(e);
        }}
      >
        <div class="versus-under">{under}</div>
        <div class="versus-over" style={{ clipPath: `inset(0 ${(1 - share) * 100}% 0 0)` }}>
          {over}
        </div>
        <span class="versus-edge" style={{ left: `${share * 100}%` }} />
      </div>
      <Slider
        label={w.wipeAt}
        value={share}
        min={0}
        max={1}
        step={0.01}
        text={w.wipeSays(Math.round(share * 100))}
        onMove={(v) => {
          at.value = v;
        }}
        onSettle={() => undefined}
      />
    </div>
  );
}
