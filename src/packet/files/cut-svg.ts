import { length, name as asName, say, sentences, type Saying } from '../../words/index.ts';
import type { CutLines } from '../../core/cutfile/index.ts';
import { cleanNote } from '../../core/plain-text.ts';
import { markArmMm, registerMarks } from '../marks.ts';
import type { Voice } from '../voice.ts';
import { sideOf } from '../pages/words.ts';

type CutLayer = import('../../core/plan/index.ts').Plan['layers'][number];

/**
 * A stencil as SVG at true size: one unit is one millimetre, origin at the image's top left corner, so that every stencil
 * of a job lies on the others. The group `cut` holds closed paths only; marks and the sheet's edge are apart.
 */
export function cutSvg(
  layer: CutLayer,
  lines: CutLines,
  image: { readonly widthMm: number; readonly heightMm: number },
  title: string,
  voice: Voice,
  kerfMm = 0,
): string {
  const { sheet } = layer.stencil;
  const width = sheet.maxX - sheet.minX,
    height = sheet.maxY - sheet.minY;
  const arm = markArmMm;
  const marks = registerMarks(image, sheet)
    .map((m) => `M${mm(m.x - arm)} ${mm(m.y)}H${mm(m.x + arm)}M${mm(m.x)} ${mm(m.y - arm)}V${mm(m.y + arm)}`)
    .join('');
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="${mm(sheet.minX)} ${mm(sheet.minY)} ${mm(width)} ${mm(height)}">`,
    `<title>${escape(voice.say('packet.cutFileTitle', { title: asName(title), layer: asName(layer.name), side: sideOf(layer.side), run: layer.run }))}</title>`,
    `<desc>${escape(voice.tell(sentences(say('packet.inMillimetres'), say('packet.facesMesh'), sayKerf(kerfMm))))}</desc>`,
    `<g id="cut" fill="none" stroke="#000000" stroke-width="0.1"><path fill-rule="evenodd" d="${lines.data}"/></g>`,
    `<g id="marks" fill="none" stroke="#000000" stroke-width="0.1"><path d="${marks}"/></g>`,
    `<g id="sheet-edge" fill="none" stroke="#000000" stroke-width="0.1" stroke-dasharray="2 2"><rect x="${mm(sheet.minX)}" y="${mm(sheet.minY)}" width="${mm(width)}" height="${mm(height)}"/></g>`,
    '</svg>',
    '',
  ].join('\n');
}

/** What the tool takes is already allowed for. */
export function sayKerf(kerfMm: number): Saying | null {
  return kerfMm > 0 ? say('packet.kerfAllowed', { kerf: length(kerfMm) }) : null;
}

export function mm(value: number): string {
  const text = value.toFixed(3).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

export function escape(text: string): string {
  return cleanNote(text).replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c] ?? c);
}
