import { inEnglish } from '../../../../../test/said.ts';
import { describe, expect, test } from 'vitest';
import { parseJob, type Job } from '../../../job/index.ts';
import { planEdition } from './edition.ts';
import { planPress } from './press.ts';
import { planRegister } from './register.ts';
import { say, type Quantity, type Saying } from '../../../../words/say.ts';

function job(gaps: readonly (number | undefined)[], hinge = 'top'): Job {
  return parseJob({
    schemaVersion: 1,
    title: 'Gaps',
    image: { widthMm: 200, heightMm: 300 },
    cuts: [],
    inks: [],
    layers: gaps.map((offContactMm, i) => ({
      id: `l${i}`,
      name: `Layer ${i}`,
      cut: 'c',
      side: 'window',
      ink: null,
      ...(offContactMm === undefined ? {} : { offContactMm }),
    })),
    papers: [{ id: 'white', name: 'White', reading: { kind: 'lab', lab: [95, 0, 0] }, widthMm: 250, heightMm: 350, count: 10 }],
    screen: { insideWidthMm: 420, insideHeightMm: 560, mesh: { perCm: 77, threadMicrons: 48 }, offContactMm: 3, hingeLiftMm: 5, hinge },
  });
}
const planned = (one: Job) => {
  const press = planPress(one, one.layers);
  return { press, register: planRegister(one, one.layers, [{ first: 'l0', second: 'l1', overlapMm: 1.2 }], press) };
};

const lasting = ({ id }: { readonly id: string }) => ({ group: id, set: id, cutMinutes: 5, dries: 1, washable: true, lasts: 200 });

describe('gaps run by run', () => {
  test('one gap for all: every run grows alike, and the register pays nothing', () => {
    const { press, register } = planned(job([undefined, 3]));
    expect(press.gaps.map((gap) => [gap.gapMm, gap.own, gap.differsMm.alongMm])).toEqual([
      [3, false, 0],
      [3, false, 0],
    ]);
    expect(register.budget!.pairs[0].causes.mesh).toBe(0);
    expect(register.problems.map((p) => p.code)).not.toContain('gaps-differ');
  });

  test('another gap prints another size: it stands in the budget of the pair and is warned of with a gap that would do', () => {
    const { press, register } = planned(job([undefined, 12]));
    const [usual, wide] = press.gaps;
    expect(wide.differsMm.acrossMm).toBeCloseTo(Math.abs(Math.max(...wide.growth!.acrossMm) - Math.max(...usual.growth!.acrossMm)), 9);
    // The edges move by half of what the image grows; the larger axis counts.
    expect(register.budget!.pairs[0].causes.mesh).toBeCloseTo(Math.max(wide.differsMm.alongMm, wide.differsMm.acrossMm) / 2, 9);
    const warned = register.problems.find((p) => p.code === 'gaps-differ')!;
    expect(warned.path).toBe('layers[#l1].offContactMm');
    expect(inEnglish(warned.message)).toContain('Run 2 (Layer 1)');
    const would = ((warned.advice as Saying).values!['best'] as Quantity & { kind: 'length' }).mm;
    expect(would).toBeGreaterThan(3);
    expect(would).toBeLessThan(12);
    const then = planned(job([undefined, would])).register;
    expect(then.problems.find((p) => p.code === 'gaps-differ')?.severity ?? 'note').toBe('note');
    expect(wide.risers!.heightMm - usual.risers!.heightMm).toBeCloseTo(9, 9);
  });

  test('a hinge at the side turns along and across', () => {
    const [top, left] = (['top', 'left'] as const).map(
      (hinge) => planned(job([undefined, 8], hinge)).register.budget!.pairs[0].causes.mesh,
    );
    expect(top).not.toBeCloseTo(left, 3);
  });

  test('a gap that would tear the mesh is refused in the run that asks for it', () => {
    const { press } = planned(job([undefined, 45]));
    expect(press.problems.find((p) => p.code === 'gap-tears-mesh')).toMatchObject({
      severity: 'error',
      path: 'layers[#l1].offContactMm',
      message: { key: 'press.gapTears' },
    });
  });

  test('the hand-out’s set-up step names the gap of a run that has one of its own, and of no other', () => {
    const setUp = (gaps: readonly (number | undefined)[]): string => {
      const one = job(gaps);
      const { handout } = planEdition(one, one.layers, planned(one).press, say('register.pins'), 1, one.layers.map(lasting), undefined);
      const step = handout?.steps.find(({ picture }) => picture.kind === 'stops');
      return step ? inEnglish(step.text).replaceAll('\u00a0', ' ') : '';
    };
    expect(setUp([undefined, 5])).toContain('Gap between mesh and paper 3 mm. For run 2 (Layer 1) make the gap 5 mm.');
    expect(setUp([undefined, undefined])).not.toContain('For run');
  });
});
