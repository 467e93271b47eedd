import { effect } from '@preact/signals';
import type { ShownPlan } from '../../engine/protocol.ts';
import type { Bench } from '../../store/bench.ts';
import type { Keeper } from '../../store/keep/keep.ts';
import type { Keeping } from '../../store/keep/keeping.ts';
import { keepProof } from '../../store/keep/sight.ts';
import { paintSamples, sampleCodes } from '../../ui/proof/proof-pixels.ts';

/** The longer side of a small proof, pixels. */
const longPx = 240;
/** A pause of the hand after which it is made. */
const restMs = 1500;

/** The print on the first paper, small, as an address that holds it; null without a paper that was read. */
function smallProof(plan: ShownPlan): string | null {
  const paper = plan.papers[0];
  if (!paper) return null;
  const { widthMm, heightMm } = plan.job.image;
  const per = longPx / Math.max(widthMm, heightMm);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(widthMm * per));
  canvas.height = Math.max(1, Math.round(heightMm * per));
  const context = canvas.getContext('2d');
  if (!context) return null;
  const image = context.createImageData(canvas.width, canvas.height);
  paintSamples(sampleCodes(plan.codes, canvas.width, canvas.height, 3), paper.palette, new Uint32Array(image.data.buffer));
  context.putImageData(image, 0, 0);
  return canvas.toDataURL('image/png');
}

/** Keeps the small proof of the print on the bench as it is now, if its Plan is made; not while pots are only tried. */
export async function keepThumb(bench: Bench, keeping: Keeping): Promise<void> {
  const plan = bench.plan.peek();
  if (plan && bench.fit.peek() === 'whole' && bench.trials.peek().size === 0) await keepPlanned(keeping.print.peek(), plan);
}

/** Makes the small proofs that are missing, one after the other, until it is stopped: prints that came from a file, copies. */
export async function makeThumbs(
  bench: Bench,
  keeper: Keeper,
  missing: readonly string[],
  signal: AbortSignal,
  onMade: (print: string, address: string) => void,
): Promise<void> {
  for (const print of missing) {
    // A Plan that was stopped is not made for a thumbnail.
    await bench.upToDate().catch(() => undefined);
    if (bench.stopped.peek()) return;
    const whole = signal.aborted ? null : await keeper.print(print);
    if (!whole || whole.job.layers.length === 0) continue;
    const plan = await bench.ask('otherPlan', { job: whole.job, attachments: whole.attachments }, { signal }).catch(() => null);
    const address = plan && (await keepPlanned(print, plan));
    if (address) onMade(print, address);
  }
}

async function keepPlanned(print: string, plan: ShownPlan): Promise<string | null> {
  const address = smallProof(plan);
  if (address !== null) await keepProof(print, address);
  return address;
}

/** The same whenever the hand has rested. */
export function keepThumbs(bench: Bench, keeping: Keeping): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    clearTimeout(timer);
    if (!bench.plan.value || bench.fit.value !== 'whole' || bench.trials.value.size > 0) return;
    timer = setTimeout(() => void keepThumb(bench, keeping), restMs);
  });
}
