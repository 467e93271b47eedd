/** Figures as pen strokes, for machines without letters: up to seven strokes a figure, as on a plain counter. */
const strokesOf: Readonly<Record<string, string>> = {
  '0': 'abcdef',
  '1': 'bc',
  '2': 'abged',
  '3': 'abgcd',
  '4': 'fgbc',
  '5': 'afgcd',
  '6': 'afgedc',
  '7': 'abc',
  '8': 'abcdefg',
  '9': 'abcdfg',
  '-': 'g',
};
const strokeAt: Readonly<Record<string, readonly [number, number, number, number]>> = {
  a: [0, 0, 1, 0],
  b: [1, 0, 1, 1],
  c: [1, 1, 1, 2],
  d: [0, 2, 1, 2],
  e: [0, 1, 0, 2],
  f: [0, 0, 0, 1],
  g: [0, 1, 1, 1],
};

/** @param x, y top left of the first figure, mm. Other characters leave a gap. */
export function penFigures(text: string, x: number, y: number, highMm: number): number[][] {
  const unit = highMm / 2;
  return [...text].flatMap((figure, i) =>
    [...(strokesOf[figure] ?? '')].map((s) => {
      const [x0, y0, x1, y1] = strokeAt[s];
      const left = x + i * unit * 1.6;
      return [left + x0 * unit, y + y0 * unit, left + x1 * unit, y + y1 * unit];
    }),
  );
}
