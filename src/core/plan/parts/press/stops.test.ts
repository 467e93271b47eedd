import { describe, expect, test } from 'vitest';
import { JobSchema, type Job } from '../../../job/index.ts';
import { planStops } from './stops.ts';

const paper = (id: string, widthMm: number, heightMm: number, more: object = {}): object => ({
  id,
  name: id,
  reading: { kind: 'lab', lab: [95, 0, 0] },
  widthMm,
  heightMm,
  count: 10,
  ...more,
});
const job = (...papers: object[]): Pick<Job, 'papers' | 'image'> =>
  JobSchema.parse({ schemaVersion: 1, title: 'Stops', image: { widthMm: 180, heightMm: 240 }, papers });

/** Stops from the corner, across and up: what stands on the board. */
const onBoard = ({ stops }: ReturnType<typeof planStops>): string[] =>
  stops.map(({ template: { stops: three, cornerMm } }) =>
    JSON.stringify(three.map((s) => [s.xMm - cornerMm[0], cornerMm[1] - s.yMm].map((v) => Math.round(v * 1000)))),
  );

describe('stops', () => {
  test('stand once for sheets of different sizes, and the image sits off-centre on the larger', () => {
    const found = planStops(job(paper('a', 260, 330), paper('b', 250, 330), paper('c', 260, 330)), 3);
    expect(found.settings).toMatchObject([{ paperIds: ['a', 'b', 'c'], imageFromCornerMm: [35, 45] }]);
    expect(new Set(onBoard(found)).size).toBe(1);
    expect(found.stops.map((s) => s.template.image.xMm)).toEqual([35, 35, 35]);
    expect(found.problems).toEqual([]);
  });
  test('follow the paper that says where its image lies', () => {
    const found = planStops(job(paper('a', 260, 330), paper('b', 250, 330, { imageAtMm: [20, 30] })), 3);
    expect(found.settings).toMatchObject([{ imageFromCornerMm: [20, 60] }]);
    expect(new Set(onBoard(found)).size).toBe(1);
  });
  test('are set twice where two papers ask for different places, and that is said', () => {
    const found = planStops(job(paper('a', 260, 330, { imageAtMm: [40, 40] }), paper('b', 250, 330, { imageAtMm: [20, 30] })), 3);
    expect(found.settings).toHaveLength(2);
    expect(found.problems.map((p) => p.code)).toEqual(['stop-settings']);
  });
  test('are as thick as the thickest sheet asks for', () => {
    const found = planStops(job(paper('a', 260, 330, { thicknessMm: 0.2 }), paper('b', 250, 330, { thicknessMm: 0.6 })), 3);
    expect(found.settings[0].thicknessMm[0]).toBeGreaterThan(0.6);
  });
});
