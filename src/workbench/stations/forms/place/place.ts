import { repeatPlacements, type Box } from '../../../../core/form/index.ts';
import type { Job, JobPart } from '../../../../core/job/index.ts';
import type { PlannedForm } from '../../../../core/plan/index.ts';
import { sayLength, sayNumber, type LengthUnits } from '../../../ui/fields/units.ts';
import type { Bench } from '../../../store/bench.ts';
import { arrowStep } from '../../../ui/screen/drag.ts';
import { step, words } from '../../../store/words.ts';
import { tidy, withoutPart, withPart } from '../edits.ts';
import { takePart } from '../state.ts';

export const imageBox = (image: Job['image']): Box => ({ minX: 0, minY: 0, maxX: image.widthMm, maxY: image.heightMm });

/** Where all copies of a part lie, as SVG transforms of the form drawn from its box's corner. */
export function copiesOf(part: JobPart, form: PlannedForm, image: Job['image']): string[] {
  return repeatPlacements(part, part.repeat, imageBox(image)).placements.map(
    (p) =>
      `translate(${tidy(p.xMm)} ${tidy(p.yMm)}) rotate(${tidy(p.angleDeg)}) scale(${p.mirror ? -p.scale : p.scale} ${p.scale}) translate(${-form.widthMm / 2} ${-form.heightMm / 2})`,
  );
}

export interface PartInHand {
  readonly bench: Bench;
  readonly cutId: string;
  readonly index: number;
  readonly part: JobPart;
  readonly form: PlannedForm;
}

const sayAngle = (degrees: number): string => `${sayNumber(degrees, 1, false)}°`;
export const within = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;
const sayPlace = (part: JobPart, units: LengthUnits): readonly [string, string] => [sayLength(part.xMm, units), sayLength(part.yMm, units)];

/** The part as the job has it now: keys come faster than the page is drawn. */
const fresh = (hand: PartInHand): PartInHand => {
  const part = hand.bench.job.peek()?.cuts.find((c) => c.id === hand.cutId)?.parts[hand.index];
  return part ? { ...hand, part } : hand;
};

/** Puts a part somewhere else, as one named step; `mark` joins steps of one gesture. */
export function movePart({ bench, cutId, index, part, form }: PartInHand, xMm: number, yMm: number, mark?: string): void {
  const put = { xMm: tidy(xMm), yMm: tidy(yMm) };
  if (put.xMm === part.xMm && put.yMm === part.yMm) return;
  bench.edit(step('moveForm', form.name), (job) => withPart(job, cutId, index, put), mark === undefined ? {} : { mark });
  const units = bench.job.peek()?.units ?? 'mm';
  bench.announce(words().forms.partMoved(form.name, ...sayPlace({ ...part, ...put }, units)));
}

export function turnPart({ bench, cutId, index, part, form }: PartInHand, angleDeg: number, mark?: string): void {
  const put = tidy(within(angleDeg), 10);
  if (put === part.angleDeg) return;
  bench.edit(step('turnForm', form.name), (job) => withPart(job, cutId, index, { angleDeg: put }), mark === undefined ? {} : { mark });
  bench.announce(words().forms.partTurned(form.name, sayAngle(put)));
}

export function scalePart({ bench, cutId, index, part, form }: PartInHand, scale: number, mark?: string): void {
  const put = tidy(Math.min(1000, Math.max(0.01, scale)), 10000);
  if (put === part.scale) return;
  bench.edit(step('scaleForm', form.name), (job) => withPart(job, cutId, index, { scale: put }), mark === undefined ? {} : { mark });
  bench.announce(words().forms.partSized(form.name, sayLength(form.widthMm * put, bench.job.peek()?.units ?? 'mm')));
}

export function mirrorPart({ bench, cutId, index, part, form }: PartInHand): void {
  bench.edit(step('mirrorForm', form.name), (job) => withPart(job, cutId, index, { mirror: !part.mirror }));
}

export function takePartOff({ bench, cutId, index, form }: PartInHand): void {
  bench.edit(step('takeOffForm', form.name), (job) => withoutPart(job, cutId, index));
  takePart(null);
}

/** Everything the keyboard does to a part in hand. Returns whether the key meant something. */
export function partKey(held: PartInHand, e: KeyboardEvent): boolean {
  if (e.ctrlKey || e.metaKey) return false;
  const hand = fresh(held);
  const { part, index, cutId } = hand;
  const mark = `${cutId}:${index}`;
  const by = arrowStep(e);
  if (by) movePart(hand, part.xMm + by[0], part.yMm + by[1], `move:${mark}`);
  else if (e.key === 'PageUp' || e.key === 'PageDown')
    turnPart(hand, part.angleDeg + (e.key === 'PageUp' ? -1 : 1) * (e.shiftKey ? 15 : e.altKey ? 0.5 : 5), `turn:${mark}`);
  else if (e.key === '+' || e.key === '=') scalePart(hand, part.scale * 1.05, `scale:${mark}`);
  else if (e.key === '-') scalePart(hand, part.scale / 1.05, `scale:${mark}`);
  else if (e.key === 'm' || e.key === 'M') mirrorPart(hand);
  else if (e.key === 'Delete' || e.key === 'Backspace') takePartOff(hand);
  else if (e.key === 'Escape') takePart(null);
  else return false;
  e.preventDefault();
  return true;
}
