import { readFileSync, writeFileSync } from 'node:fs';
import { createCanvas, Path2D, type SKRSContext2D } from '@napi-rs/canvas';
import { asked80, type SideJudged } from '../../test/corpus.ts';
import { pathData, takeAway, type Region } from '../../src/core/form/index.ts';
import { makeStencil } from '../../src/core/stencil/index.ts';
import type { Line } from './record.ts';

const howMany = 20,
  columns = 5;
const tilePx = 440,
  captionPx = 58,
  imageMm = 100;
const colours = { asked: '#d8d8d8', prints: '#222', lost: '#d9480f', more: '#1971c2', fault: '#e03131' };

/** Refused before all, then what took longest: the two tell how hard a drawing is. */
export function hardest(lines: readonly Line[]): readonly (SideJudged & { readonly name: string; readonly path: string })[] {
  const sides = lines.flatMap(({ name, path, judged }) => {
    const hard = [...(judged?.sides ?? [])].sort((a, b) => hardness(b) - hardness(a));
    return hard.slice(0, 1).map((side) => ({ name, path, ...side }));
  });
  return sides.sort((a, b) => hardness(b) - hardness(a)).slice(0, howMany);
}

const hardness = ({ holds, ms, waysMs }: SideJudged): number => (holds ? 0 : 1e6) + ms + waysMs;

/** The twenty hardest as one picture: what prints in black, what of the drawing is lost in red, what prints in addition in blue, faults ringed. */
export function hardestSheet(lines: readonly Line[], file: string): void {
  const shown = hardest(lines);
  const rows = Math.max(1, Math.ceil(shown.length / columns));
  const canvas = createCanvas(columns * tilePx, rows * (tilePx + captionPx));
  const pen = canvas.getContext('2d');
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  shown.forEach((one, i) => {
    pen.save();
    pen.translate((i % columns) * tilePx, Math.floor(i / columns) * (tilePx + captionPx));
    tile(pen, one);
    pen.restore();
  });
  writeFileSync(file, canvas.toBuffer('image/png'));
}

function tile(pen: SKRSContext2D, { name, path, side, holds, ms, waysMs, ways, told }: ReturnType<typeof hardest>[number]): void {
  const asked = asked80(readFileSync(path, 'utf8'), name, side);
  const made = makeStencil(asked);
  const { shape } = asked;
  const whole = { rings: [Float64Array.of(0, 0, imageMm, 0, imageMm, imageMm, 0, imageMm)] };
  const meant = side === 'window' ? shape : takeAway(whole, shape);
  pen.save();
  pen.scale(tilePx / imageMm, tilePx / imageMm);
  fill(pen, meant, colours.asked);
  fill(pen, made.prints, colours.prints);
  fill(pen, takeAway(meant, made.prints), colours.lost);
  fill(pen, takeAway(made.prints, meant), colours.more);
  pen.strokeStyle = colours.fault;
  pen.lineWidth = 0.5;
  for (const { atMm } of made.certificate.faults) {
    pen.beginPath();
    pen.arc(atMm[0], atMm[1], 1.8, 0, 2 * Math.PI);
    pen.stroke();
  }
  pen.restore();
  pen.fillStyle = '#000';
  pen.font = '15px sans-serif';
  const seconds = (v: number): string => `${(v / 1000).toFixed(1)} s`;
  const state = holds ? 'holds' : `refused, ${made.certificate.faults.length} faults, ${ways ?? 0} ways out (${seconds(waysMs)})`;
  pen.fillText(`${name.split('/').pop()} ${side}, ${seconds(ms)}: ${state}`, 6, tilePx + 20, tilePx - 12);
  pen.fillText([...new Set(told)].join(' ').replaceAll('stencil-', ''), 6, tilePx + 42, tilePx - 12);
  pen.strokeStyle = '#888';
  pen.strokeRect(0.5, 0.5, tilePx - 1, tilePx + captionPx - 1);
}

function fill(pen: SKRSContext2D, region: Region, colour: string): void {
  pen.fillStyle = colour;
  pen.fill(new Path2D(pathData(region)), 'evenodd');
}
