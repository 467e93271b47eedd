import { signal, type ReadonlySignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useMemo } from 'preact/hooks';
import { moveLayer } from '../../store/edits.ts';
import type { Bench } from '../../store/bench.ts';
import { step, words } from '../../words/index.ts';

/** A shelf in the hand: how far it has been carried, and the gap it would go into. */
export interface Carried {
  readonly layerId: string;
  readonly byPx: number;
  /** Place in the laydown where it would land, 0 is printed first. */
  readonly to: number;
  readonly from: number;
  readonly heightPx: number;
}
export interface ShelfDrag {
  readonly carried: ReadonlySignal<Carried | null>;
  readonly handle: (layerId: string) => {
    onPointerDown(e: PointerEvent): void;
    onPointerMove(e: PointerEvent): void;
    onPointerUp(e: PointerEvent): void;
    onPointerCancel(e: PointerEvent): void;
  };
}

/** Moves a layer and says so. Shared by pointer, buttons and keys. */
export function moveShelf(bench: Bench, layerId: string, to: number): void {
  const job = bench.job.peek();
  if (!job) return;
  const from = job.layers.findIndex((l) => l.id === layerId);
  const { name, off } = job.layers[from];
  const w = words().laydown;
  if (to < 0) return bench.announce(w.atBottom(name));
  if (to >= job.layers.length) return bench.announce(w.atTop(name));
  if (from === to) return;
  const moved = moveLayer(job, layerId, to);
  bench.edit(step('move', name, to + 1), () => moved);
  const printing = moved.layers.filter((l) => !l.off || l.id === layerId);
  bench.announce(w.moved(name, printing.findIndex((l) => l.id === layerId) + 1, off ? printing.length : printing.filter((l) => !l.off).length));
}

/** Carrying shelves up and down with mouse, pen or thumb. */
export function useShelfDrag(bench: Bench, rack: RefObject<HTMLOListElement | null>): ShelfDrag {
  return useMemo(() => {
    const carried = signal<Carried | null>(null);
    let startY = 0;
    /** Middles of all shelves when the carrying began, by place. */
    let middles: number[] = [];
    const end = (drop: boolean): void => {
      const now = carried.peek();
      carried.value = null;
      if (now && drop) moveShelf(bench, now.layerId, now.to);
    };
    return {
      carried,
      handle: (layerId) => ({
        onPointerDown(e) {
          const job = bench.job.peek();
          if (e.button !== 0 || !job || !rack.current) return;
          const shelves = [...rack.current.querySelectorAll<HTMLElement>('[data-layer]')].map((s) => s.getBoundingClientRect()).reverse();
          const from = job.layers.findIndex((l) => l.id === layerId);
          middles = shelves.map((box) => box.top + box.height / 2);
          startY = e.clientY;
          (e.currentTarget as HTMLElement).setPointerCapture(e.pointerId);
          carried.value = { layerId, byPx: 0, to: from, from, heightPx: shelves[from].height };
        },
        onPointerMove(e) {
          const now = carried.peek();
          if (!now || now.layerId !== layerId) return;
          const byPx = e.clientY - startY;
          const at = middles[now.from] + byPx;
          // Screen y grows downwards, places upwards: it lies above as many shelves as have their middle below it.
          const to = middles.filter((m, place) => place !== now.from && m > at).length;
          carried.value = { ...now, byPx, to };
        },
        onPointerUp: () => end(true),
        onPointerCancel: () => end(false),
      }),
    };
  }, [bench, rack]);
}
