import { rectangle, unite, type Region } from '../core/form/index.ts';
import { registerTestSheet, testScaleFor, type RegisterMethod, type TestLine, type TestSheet } from '../core/press/index.ts';
import { ProblemError } from '../core/problem.ts';
import { say, sentences } from '../words/index.ts';
import type { FlatSheet } from './files/flat-sheet.ts';
import { penFigures } from './files/pen-figures.ts';
import { outline } from './pdf/outline.ts';

/** null: the image is too small to hold crosses and scales. */
export function testSheetFor(widthMm: number, heightMm: number, method: RegisterMethod = 'stops'): TestSheet | null {
  try {
    return registerTestSheet([widthMm, heightMm], testScaleFor(method));
  } catch (error) {
    if (error instanceof ProblemError) return null;
    throw error;
  }
}

/** One run of the register test as a stencil: every line a slit. `borderMm` is left around the image, as on all stencils. */
export function testStencil(sheet: TestSheet, run: TestLine['run'], borderMm: number): FlatSheet {
  const [w, h] = sheet.imageMm;
  return {
    widthMm: w + 2 * borderMm,
    heightMm: h + 2 * borderMm,
    title: say(run === 'first' ? 'setUpPages.testFirstTitle' : 'setUpPages.testSecondTitle'),
    says: sentences(say('packet.facesMesh'), say('packet.numbersDrawn')),
    shapes: [
      {
        name: say(run === 'first' ? 'packet.firstRun' : 'packet.secondRun'),
        outlines: outline(unite(sheet.lines.filter((l) => l.run === run).map((l) => slit(l, borderMm)))),
      },
    ],
    edges: [],
    marks: sheet.labels
      .filter((l) => l.run === run)
      .flatMap((l) => penFigures(l.text, l.xMm + borderMm + 1.75 - 2 * l.text.length, l.yMm + borderMm - 2.5, 2.5)),
  };
}

function slit(line: TestLine, borderMm: number): Region {
  const level = line.y1Mm === line.y2Mm;
  const half = line.widthMm / 2;
  const [along, across] = level ? [0, half] : [half, 0];
  const [x0, y0] = [Math.min(line.x1Mm, line.x2Mm) - along + borderMm, Math.min(line.y1Mm, line.y2Mm) - across + borderMm];
  const [x1, y1] = [Math.max(line.x1Mm, line.x2Mm) + along + borderMm, Math.max(line.y1Mm, line.y2Mm) + across + borderMm];
  return rectangle(x0, y0, x1 - x0, y1 - y0);
}
