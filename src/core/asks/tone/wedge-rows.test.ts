import { expect, test } from 'vitest';
import { isWedge, wedgeRows } from './wedge-rows.ts';

const steps = [
  [0, 0.05],
  [50, 0.62],
  [100, 1.42],
] as const;
const comma = (n: number): string => String(n).replace('.', ',');
const lines = (row: (step: number, density: number) => string, ...heads: string[]): string =>
  [...heads, ...steps.map(([s, d]) => row(s, d))].join('\n');

test.each([
  ['a colon', lines((s, d) => `${s}: ${d}`)],
  ['a colon, one line', lines((s, d) => `${s} %: ${comma(d)}`).replaceAll('\n', '; ')],
  ['commas', lines((s, d) => `${s},${d}`)],
  ['headings', lines((s, d) => `${s},${d}`, 'step,density')],
  ['semicolons', lines((s, d) => `${s};${comma(d)}`, 'Stufe;Dichte')],
  ['commas in and between', lines((s, d) => `${s},${comma(d)}`, 'Stufe,Dichte')],
  ['tabs, from another system', lines((s, d) => `${s} %\t${d}`, '# Night blue').replaceAll('\n', '\r\n')],
  ['blanks', lines((s, d) => `${s}  ${comma(d)}`)],
  ['shares', lines((s, d) => `${s / 100}, ${d}`)],
  ['more columns', lines((s, d) => `x;${s};61,2;${comma(d)}`, 'field;film %;L;density').replaceAll('x;', '7;')],
])('steps and densities with %s', (_, text) => {
  const rows = wedgeRows(text)!;
  expect(rows.map((r) => [r.cover * 100, Number(r.value.replace(',', '.'))])).toEqual(steps);
});

test('colours, names of files and single numbers are no table of densities', () => {
  for (const text of ['name,L,a,b\n5,90,-1,-3\n100,40,-18,-30', '95,0,2\n60,1,3\n20,0,1', 'wedge 5.csv', '50: 0.62', '', '5\n7\n9'])
    expect(wedgeRows(text)).toBeNull();
  expect(isWedge('wedge 5.csv')).toBe(false);
  expect(isWedge('50: 0.62')).toBe(true);
  expect(wedgeRows('50: 0.62; 140: 1.1')!.map((r) => r.cover)).toEqual([0.5, NaN]);
});
