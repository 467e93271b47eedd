import { effect, signal } from '@preact/signals';
import { orderInRun } from '../../../../core/edition/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { language } from '../../../store/words.ts';
import { paintSamples, sampleCodes } from '../../../ui/proof/proof-pixels.ts';
import type { ShownPaper, ShownPlan } from '../../../engine/protocol.ts';
import type { AwayView } from '../../../away/view.ts';
import { countOf } from './count.ts';

/** Where a phone finds the counting page; null while nothing is shared. */
export interface Shared {
  readonly address: string;
  readonly code: string;
  /** As a picture, an SVG. */
  readonly qr: string;
  readonly devices: number;
}
export const shared = signal<Shared | 'gone' | null>(null);

const askMs = 1500;
const proofPx = 260;

/** Shares the count of the job on the bench through the program that serves this page, if it was started so. Counts only what is counted; asks nobody else. */
export function shareCount(bench: Bench, search: string): void {
  if (new URLSearchParams(search).get('share') !== 'on') return;
  const count = countOf(bench);
  let told: string | null = null;
  const ask = async (): Promise<void> => {
    const [plan, print] = [bench.plan.peek(), count.print.peek()];
    if (!plan || print === null || !count.ready.peek()) return;
    const view = bench.fit.peek() === 'whole' ? JSON.stringify(viewOf(plan)) : told;
    try {
      const response = await fetch('./share/desk', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ print, view: view === told ? null : view, lines: count.lines.peek() }),
      });
      if (!response.ok) return;
      const heard = (await response.json()) as Shared & { readonly lines: readonly string[] };
      told = view;
      shared.value = { address: heard.address, code: heard.code, qr: heard.qr, devices: heard.devices };
      await count.takeIn(print, heard.lines);
    } catch {
      if (shared.peek() !== null) shared.value = 'gone';
    }
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const again = (): void => {
    clearTimeout(timer);
    void ask().finally(() => {
      timer = setTimeout(again, askMs);
    });
  };
  effect(() => {
    // What was counted here is told at once.
    void count.lines.value;
    again();
  });
}

/** What a device at the press is shown: the runs and their sheets, no more. */
function viewOf(plan: ShownPlan): AwayView {
  const { sheets } = plan.edition;
  const paper = plan.papers[0];
  return {
    title: plan.job.title,
    language: language.peek(),
    runs: sheets
      ? plan.layers.map((layer) => ({
          id: layer.id,
          name: layer.name,
          colour: layer.swatch?.srgb ?? null,
          proof: paper ? proofAfter(plan, paper, layer.run) : null,
          sheets: orderInRun(sheets, layer.run - 1).map(({ id, paper: on }) => ({ id, paper: on })),
        }))
      : [],
  };
}

const painted = new WeakMap<Uint32Array, string>();

function proofAfter(plan: ShownPlan, paper: ShownPaper, run: number): string | null {
  const printed = plan.layers.filter((l) => l.inkId !== null && l.run <= run).length;
  const palette = printed === 0 ? null : (paper.progressive[Math.min(printed, paper.progressive.length) - 1] ?? null);
  if (!palette) return null;
  let address = painted.get(palette);
  if (address === undefined) {
    const { widthMm, heightMm } = plan.job.image;
    const canvas = document.createElement('canvas');
    canvas.width = proofPx;
    canvas.height = Math.max(1, Math.round((proofPx * heightMm) / widthMm));
    const context = canvas.getContext('2d')!;
    const image = context.createImageData(canvas.width, canvas.height);
    paintSamples(sampleCodes(plan.codes, canvas.width, canvas.height, 2), palette, new Uint32Array(image.data.buffer));
    context.putImageData(image, 0, 0);
    painted.set(palette, (address = canvas.toDataURL('image/png')));
  }
  return address;
}
