import { describe, expect, test } from 'vitest';
import { rectangle, takeAway } from '../../../form/index.ts';
import { defaultMaterials, makeStencil } from '../../../stencil/index.ts';
import { asWritten, say } from '../../../../words/say.ts';
import { inEnglish } from '../../../../../test/said.ts';
import { planCut } from './cut-pairs.ts';

const square = rectangle(30, 30, 40, 40);
const ring = takeAway(square, rectangle(42, 42, 16, 16));
const stencil = (side: 'window' | 'piece', shape = square, islands: 'bridge' | 'loose' = 'bridge') =>
  makeStencil({
    shape,
    side,
    aperture: rectangle(0, 0, 100, 100),
    sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
    material: defaultMaterials[1],
    islands: side === 'piece' ? 'loose' : islands,
  });
const layer = (run: number, side: 'window' | 'piece', pulls: number, made = stencil(side)) => ({
  id: `run-${run}`,
  run,
  side,
  sheetsThrough: pulls,
  stencil: made,
});
const paper = { name: say('stencil.coatedPaper'), prints: [20, 50] as const, washable: false };
const film = { name: say('stencil.polyesterFilm'), prints: [200, 1000] as const, washable: true };
const none = new Map<string, number>();

describe('one cut, two stencils', () => {
  test('the window prints first, what dropped out waits for its run', () => {
    const found = planCut([layer(2, 'window', 15), layer(5, 'piece', 15)], none, paper, 0);
    expect(found).toMatchObject({ timesToCut: 1, why: say('plan.oneCutForBoth') });
    expect(found.uses).toMatchObject([
      { run: 2, sheets: [1], after: 'spent', keepForRun: 5 },
      { run: 5, sheets: [1], after: 'spent' },
    ]);
    expect(found.uses[1].keepForRun).toBeUndefined();
    expect(found.sets).toEqual([{ layerId: 'run-2', serves: ['run-2', 'run-5'], sheets: [1] }]);
  });
  test('paper that dies in its run must be cut again for the same side; its other side goes with the sheet that is at hand', () => {
    const found = planCut([layer(1, 'window', 15), layer(3, 'piece', 15), layer(4, 'window', 15)], none, paper, 0);
    expect(found.timesToCut).toBe(2);
    expect(inEnglish(found.why)).toBe('Coated paper can’t be washed: it is spent after one run, and 2 runs need the same side.');
    expect(found.uses.map((u) => [u.run, u.side, u.sheets, u.after])).toEqual([
      [1, 'window', [1], 'spent'],
      [3, 'piece', [1], 'spent'],
      [4, 'window', [2], 'spent'],
    ]);
  });
  test('film is washed and serves again', () => {
    const found = planCut([layer(1, 'window', 15), layer(4, 'window', 15)], none, film, 0);
    expect(found.timesToCut).toBe(1);
    expect(found.uses).toMatchObject([
      { after: 'wash', againInRun: 4, sheets: [1] },
      { after: 'done', sheets: [1] },
    ]);
  });
  test('a sheet that does not last the run is followed by the next; film carries on where it stopped', () => {
    const worn = planCut([layer(1, 'window', 50)], none, paper, 0);
    expect(worn.timesToCut).toBe(3);
    expect(inEnglish(worn.why)).toBe('Coated paper lasts about 20 pulls; this side prints 50.');
    expect(worn.uses[0].sheets).toEqual([1, 2, 3]);
    const shared = planCut([layer(1, 'window', 150), layer(2, 'window', 150)], none, film, 0);
    expect(shared.timesToCut).toBe(2);
    expect(shared.uses.map((u) => u.sheets)).toEqual([[1], [1, 2]]);
  });
  test.each([
    [
      'bridges across what drops out',
      [layer(1, 'window', 9, stencil('window', ring)), layer(2, 'piece', 9, stencil('piece', ring))],
      none,
      0,
      'plan.bridgesInPiece',
    ],
    ['a layer that is spread', [layer(1, 'window', 9), layer(2, 'piece', 9)], new Map([['run-1', 1]]), 0, 'plan.spreadCutAlone'],
    ['a machine that takes a kerf', [layer(1, 'window', 9), layer(2, 'piece', 9)], none, 0.2, 'plan.kerfOffPiece'],
  ] as const)('two cuts for %s', (_, layers, spreads, kerf, why) => {
    const found = planCut(layers, spreads, paper, kerf);
    expect(found.timesToCut).toBe(2);
    expect(found.why.key).toBe(why);
    expect(found.sets.map((s) => s.sheets)).toEqual([[1], [2]]);
    expect(found.uses.every((u) => u.keepForRun === undefined)).toBe(true);
  });
  test('a material that the studio named keeps its word in every language; one that nobody named has a word in each', () => {
    const why = (name: typeof paper.name, language: string): string =>
      inEnglish(planCut([layer(1, 'window', 50)], none, { ...paper, name }, 0).why, { language, units: 'mm' });
    expect(why(asWritten('Newsprint'), 'de')).toMatch(/^Newsprint hält/);
    expect(why(say('stencil.newsprint'), 'de')).toMatch(/^Zeitungspapier hält/);
  });
  test('a ring laid loose needs no bridge, so one cut serves both', () => {
    expect(
      planCut([layer(1, 'window', 9, stencil('window', ring, 'loose')), layer(2, 'piece', 9, stencil('piece', ring))], none, paper, 0)
        .timesToCut,
    ).toBe(1);
  });
});
