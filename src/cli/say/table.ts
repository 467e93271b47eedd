const graphemes = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

/** How many columns of a terminal a text takes. */
export function widthOf(text: string): number {
  return [...graphemes.segment(text)].length;
}

/** A text with blanks behind it, up to a width. */
export function filled(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - widthOf(text)));
}

interface Look {
  /** Columns whose texts end under one another, counted from 0: figures. */
  readonly right?: readonly number[];
  readonly indent?: string;
  readonly between?: string;
}

/** Rows as lines, each column as wide as the widest of its texts. The last is not filled up; what is missing in a row stays blank. */
export function columns(rows: readonly (readonly string[])[], { right = [], indent = '', between = '  ' }: Look = {}): string[] {
  const widths: number[] = [];
  for (const row of rows) row.forEach((text, i) => (widths[i] = Math.max(widths[i] ?? 0, widthOf(text))));
  return rows.map((row) =>
    row
      .map((text, i) => (right.includes(i) ? ' '.repeat(widths[i] - widthOf(text)) + text : filled(text, widths[i])))
      .reduce((line, text, i) => line + (i === 0 ? '' : between) + text, indent)
      .trimEnd(),
  );
}

/** A text in lines of at most so many columns, broken between words. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
