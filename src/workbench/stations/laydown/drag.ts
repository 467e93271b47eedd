import { signal, type ReadonlySignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useMemo } from 'preact/hooks';
import { moveLayer } from '../../store/edits.ts';
import type { Bench } from '../../store/bench.ts';
import { step, words } from '../../store/words.ts';

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
  bench.announce(
    w.moved(name, printing.findIndex((l) => l.id === layerId) + 1, off ? printing.length : printing.filter((l) => !l.off).length),
  );
}

/** How near the edge of the window the shelves begin to pass by. */
const edgePx = 56;

/** Carrying shelves up and down with mouse, pen or thumb. */
export function useShelfDrag(bench: Bench, rack: RefObject<HTMLOListElement | null>): ShelfDrag {
  return useMemo(() => {
    const carried = signal<Carried | null>(null);
    let startY = 0;
    let startScroll = 0;
    let pointerY = 0;
    /** Shelves pass by on their own while one is held near the top or bottom of the window. */
    let scrolling = 0;
    /** Middles of all shelves when the carrying began, by place. */
    let middles: number[] = [];
    const follow = (): void => {
      const now = carried.peek();
      if (!now) return;
      const byPx = pointerY - startY + scrollY - startScroll;
      const at = middles[now.from] + byPx;
      // Screen y grows downwards, places upwards: it lies above as many shelves as have their middle below it.
      const to = middles.filter((m, place) => place !== now.from && m > at).length;
      if (byPx !== now.byPx || to !== now.to) carried.value = { ...now, byPx, to };
    };
    const scroll = (): void => {
      if (!carried.peek()) return;
      const top = rack.current?.closest('.laydown')?.querySelector('.proof-figure')?.getBoundingClientRect().bottom ?? 0;
      const above = pointerY - (matchMedia('(max-width: 72rem)').matches ? Math.max(0, top) : 0) - edgePx;
      const below = pointerY - innerHeight + edgePx;
      const by = above < 0 ? Math.max(-16, above / 4) : below > 0 ? Math.min(16, below / 4) : 0;
      if (by !== 0) {
        scrollBy(0, by);
        follow();
      }
      scrolling = requestAnimationFrame(scroll);
    };
    const end = (drop: boolean): void => {
      const now = carried.peek();
      carried.value = null;
      cancelAnimationFrame(scrolling);
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
          startY = pointerY = e.clientY;
          startScroll = scrollY;
          (e.currentTarget as HTMLElement).setPointerCapture(e.pointerId);
          carried.value = { layerId, byPx: 0, to: from, from, heightPx: shelves[from].height };
          scrolling = requestAnimationFrame(scroll);
        },
        onPointerMove(e) {
          const now = carried.peek();
          if (!now || now.layerId !== layerId) return;
          pointerY = e.clientY;
          follow();
        },
        onPointerUp: () => end(true),
        onPointerCancel: () => end(false),
      }),
    };
  }, [bench, rack]);
}
