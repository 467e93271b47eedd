import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { newPicture } from '../../../core/job/picture.ts';
import type { JobPicture } from '../../../core/job/index.ts';
import { refusalOf } from '../../../../test/said.ts';
import { asWritten } from '../../../words/index.ts';
import { readJobAt } from '../../disk/folder.ts';
import { boxOf, markOf, marksIn } from '../../places.ts';
import { askOf } from './separate-ask.ts';

const { job } = readJobAt(fileURLToPath(new URL('../../../../examples/tide-pool', import.meta.url)));
const fresh = newPicture('tide.jpg', new Map());
const here = asWritten('here');

describe('a place on the picture', () => {
  test('four numbers in per cent, however they are written', () => {
    const box = { x: 0.125, y: 0.05, width: 0.5, height: 0.4 };
    for (const text of ['12.5,5,50,40', '12.5, 5, 50, 40', '12,5 5 50 40', '12,5 %; 5 %; 50 %; 40 %', ' 12.5% 5% 50% 40% '])
      expect(boxOf(text, here), text).toEqual(box);
    expect(boxOf('0,0,100,100', here)).toEqual({ x: 0, y: 0, width: 1, height: 1 });
    for (const text of ['', '1,2,3', '1,2,3,4,5', '-1,2,3,4', '1,2,0,4', '1,2,x,4', '1,,3,4'])
      expect(
        refusalOf(() => boxOf(text, here)),
        text,
      ).toMatch(/four numbers/);
    expect(refusalOf(() => boxOf('60,0,50,10', here))).toMatch(/beyond the edge of the picture/);
  });

  test('boxes and strokes of the brush, as the bench keeps them', () => {
    expect(markOf('More BOX 20,30,25,40', here)).toEqual({ kind: 'box', weight: 4, x: 0.2, y: 0.3, width: 0.25, height: 0.4 });
    expect(markOf('less brush 5% 10,20  40.5,25', here)).toEqual({
      kind: 'stroke',
      weight: 0.25,
      radius: 0.025,
      points: [
        [0.1, 0.2],
        [0.405, 0.25],
      ],
    });
    expect(markOf('none brush 3,5 50,50', here)).toEqual({ kind: 'stroke', weight: 0, radius: 0.0175, points: [[0.5, 0.5]] });
    for (const text of [
      '',
      'more',
      'red box 1,2,3,4',
      'more circle 5 1,1',
      'more brush 5',
      'more brush 0 1,1',
      'more brush 5 10,120',
      'more brush 5 10',
      'more brush 5 1,2,3',
      'more brush x 1,2',
    ]) {
      expect(
        refusalOf(() => markOf(text, here)),
        text,
      ).toMatch(/more, less or none/);
    }
    expect(refusalOf(() => markOf(`more brush 1${' 5,5'.repeat(5001)}`, here))).toMatch(/two strokes/);
  });

  test('a file of marks: notes and empty lines are passed over, a bad line is named', () => {
    const folder = mkdtempSync(join(tmpdir(), 'laydown-marks-')),
      path = join(folder, 'marks.txt');
    const write = (text: string): string => (writeFileSync(path, text), path);
    expect(marksIn(write('# eyes\r\nmore box 1,2,3,4\r\n\n  # mouth\nless brush 2 5,5'))).toHaveLength(2);
    expect(refusalOf(() => marksIn(write('more box 1,2,3,4\nmroe box 1,2,3,4')))).toMatch(/line 2/);
    expect(refusalOf(() => marksIn(write('# nothing yet\n')))).toMatch(/no mark in this file/);
    rmSync(folder, { recursive: true });
  });
});

describe('what is asked of a picture', () => {
  test('nothing given changes nothing; what is given is put over what was asked before', () => {
    expect(askOf({}, job, fresh)).toEqual(fresh);
    const before: JobPicture = {
      ...fresh,
      layers: 3,
      pots: ['sand'],
      wishes: [{ ink: 'sand', strength: 0.3, placeFixed: true }],
      important: [markOf('more box 1,2,3,4', here)],
      over: true,
      cutPairs: true,
      knife: { metres: 3, leastWidthMm: 2 },
      sigmaMm: 0.4,
      seed: 5,
    };
    expect(askOf({ 'taken-as': 'drawing' }, job, before).takenAs).toBe('drawing');
    expect(askOf({ 'taken-as': 'looks' }, job, { ...before, takenAs: 'drawing' }).takenAs).toBeUndefined();
    const kept = askOf({}, job, before);
    expect(kept).toMatchObject({ ...before, wishes: [before.wishes[0], { placeFixed: false }, { placeFixed: false }] });
    expect(askOf({ layer: ['1=slate'], mark: ['none box 5,5,5,5'] }, job, before)).toMatchObject({
      important: [{ weight: 4 }, { weight: 0 }],
      wishes: [{ ink: 'slate', strength: undefined, placeFixed: true }, {}, {}],
    });
  });

  test('a price and a budget of metres each take the place of the other', () => {
    const before = { ...fresh, knife: { metres: 3, minutes: 20 } };
    expect(askOf({ price: '4,5' }, job, before).knife).toMatchObject({ metres: undefined, priceMm: 4.5, minutes: 20 });
    expect(askOf({ metres: '2' }, job, { ...fresh, knife: { priceMm: 9 } }).knife).toMatchObject({ metres: 2, priceMm: undefined });
  });

  test('inks and materials go by id or by name', () => {
    expect(askOf({ pots: 'Sand yellow, slate', layer: ['2 = shell pink @ 12,5 %'], material: 'Polyester film' }, job, fresh)).toMatchObject(
      { pots: ['sand', 'slate'], material: 'film', wishes: [{}, { ink: 'shell', strength: 0.125 }, {}, {}] },
    );
  });

  test.each<readonly [Parameters<typeof askOf>[0], RegExp]>([
    [{ layers: '9' }, /--layers: .*from 1 to 8/],
    [{ layers: '2.5' }, /--layers: .*whole number/],
    [{ crop: '20,10,4,50' }, /--crop: .*less than a twentieth/],
    [{ mark: Array(501).fill('more box 1,2,3,4') }, /--mark: 501 marks/],
    [{ pots: 'clear-base' }, /--pots: The job has no pot “clear-base”/],
    [{ layer: ['2=brick'] }, /--layer: The job has no pot “brick”.*Choose among shell, rockpool/],
    [{ layer: ['slate'] }, /--layer: .*2=brick@40%/],
    [{ layer: ['1=slate@0'] }, /--layer: .*from 1 to 100/],
    [{ layer: ['5=slate'] }, /no layer 5: 4 are asked for/],
    [{ layers: '1', 'in-place': '2' }, /--in-place: There is no layer 2: 1 is asked for/],
    [{ 'in-place': 'first' }, /--in-place: There is no layer first/],
    [{ material: 'wood' }, /--material: .*newsprint, coated-paper, film/],
    [{ 'most-in-pot': '4' }, /--most-in-pot: .*from 1 to 3/],
    [{ metres: '2', price: '3' }, /--price: .*not both/],
    [{ least: '0' }, /--least: .*from 0.1 to 50/],
    [{ reach: 'far' }, /--reach: .*lightness, chroma, contrast or nearest/],
    [{ 'taken-as': 'sketch' }, /--taken-as: .*“sketch”.*drawing, photograph or looks/],
    [{ seed: 'x' }, /--seed: .*whole number/],
  ])('%j is refused with what to write', (given, said) => {
    expect(refusalOf(() => askOf(given, job, fresh))).toMatch(said);
  });
});
