import { outlineData, writeDxf, type Segment } from '../../core/form/index.ts';
import { say, sentences, type Saying } from '../../words/index.ts';
import type { Voice } from '../voice.ts';
import { escape, mm } from './cut-svg.ts';

/** x0, y0, x1, y1, … in mm. */
export type OpenLine = readonly number[];

/** A sheet for a cutting machine: mm from its top left corner. */
export interface FlatSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly title: Saying;
  /** What the operator must know, after “Millimetres.” */
  readonly says: Saying;
  /** Closed knife paths, shape by shape. */
  readonly shapes: readonly { readonly name: Saying; readonly outlines: readonly (readonly Segment[])[] }[];
  /** Cut last, so that nothing slips before. */
  readonly edges: readonly OpenLine[];
  /** Drawn, not cut. */
  readonly marks: readonly OpenLine[];
}

/** As SVG at true size. Nothing folds in a stencil, so `fold` is there and empty. */
export function flatSvg(sheet: FlatSheet, voice: Voice): string {
  const [w, h] = [mm(sheet.widthMm), mm(sheet.heightMm)];
  const open = (all: readonly OpenLine[]): string =>
    all.map(([x0, y0, ...rest]) => `M${mm(x0)} ${mm(y0)}L${rest.map(mm).join(' ')}`).join('');
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" fill="none" stroke="#000000" stroke-width="0.1">`,
    `<title>${escape(voice.tell(sheet.title))}</title>`,
    `<desc>${escape(voice.tell(sentences(say('packet.inMillimetres'), sheet.says)))}</desc>`,
    `<g id="mark"><path d="${open(sheet.marks)}"/></g>`,
    '<g id="fold"/>',
    `<g id="cut">${sheet.shapes.map((s) => `<path fill-rule="evenodd" d="${outlineData(s.outlines)}"><title>${escape(voice.tell(s.name))}</title></path>`).join('\n')}</g>`,
    `<g id="edges"><path d="${open(sheet.edges)}"/></g>`,
    '</svg>',
    '',
  ].join('\n');
}

/** The same as DXF in millimetres: MARK, FOLD, CUT (edges last). */
export function flatDxf(sheet: FlatSheet): string {
  return writeDxf(
    [
      { name: 'MARK', colour: 5, outlines: [], lines: sheet.marks },
      { name: 'FOLD', colour: 3, outlines: [] },
      { name: 'CUT', colour: 7, outlines: sheet.shapes.flatMap((s) => s.outlines), lines: sheet.edges },
    ],
    { minX: 0, maxY: sheet.heightMm },
  );
}
