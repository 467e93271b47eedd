import { lookAtWays, pictureRgb, scaledLab, type SeparateRequest, type WayLook } from '../../../core/separate/index.ts';
import { xyzFromSpectrum } from '../../../core/colour/index.ts';
import type { Task } from '../../../core/task.ts';
import { rgbPng } from '../../../packet/index.ts';
import { deltaE, list, name as asName, say, share, time } from '../../../words/index.ts';
import { writeNew } from '../../disk/write-file.ts';
import { knifeLength, sayHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';

/** Between the drawings, pixels. */
const gap = 12,
  ground = 128;

const wayNames = { near: say('inkAnswers.wayNear'), bold: say('inkAnswers.wayBold'), light: say('inkAnswers.wayLight') };

/** The ways drawn small beside the picture, in one file, and what each asks of the knife. */
export async function drawWays(request: SeparateRequest, file: string, replace: boolean, task: Task): Promise<void> {
  const looks: WayLook[] = [];
  for await (const look of lookAtWays(request, task)) looks.push(look);
  writeNew(file, replace, () => beside(request, looks));
  console.log(
    sayHere('inkAnswers.waysDrawn', {
      file: asName(file),
      ways: list(
        looks.map(({ way }) => wayNames[way]),
        'comma',
      ),
    }),
  );
  const rows = looks.map(({ way, minutes, metres, structure, meanDeltaE }) => [
    way,
    tellHere(wayNames[way]),
    sayHere('inkAnswers.wayAsks', {
      time: time(minutes),
      along: knifeLength(metres),
      kept: share(structure.kept, 0),
      invented: share(structure.invented, 0),
      deltaE: deltaE(meanDeltaE),
    }),
  ]);
  for (const line of columns(rows, { indent: '  ' })) console.log(line);
}

function beside({ picture, crop, paper, sizeMm }: SeparateRequest, looks: readonly WayLook[]): Uint8Array {
  const [{ width, height }] = looks,
    across = (looks.length + 1) * (width + gap) + gap,
    down = height + 2 * gap,
    all = new Uint8Array(across * down * 3).fill(ground);
  const lab = scaledLab(picture, crop ?? { x: 0, y: 0, width: 1, height: 1 }, width, height, xyzFromSpectrum(paper));
  const prints = looks.map(({ codes, rgb }) =>
    Uint8Array.from({ length: codes.length * 3 }, (_, i) => rgb[codes[Math.floor(i / 3)] * 3 + (i % 3)]),
  );
  for (const [k, print] of [pictureRgb(lab), ...prints].entries())
    for (let y = 0; y < height; y++)
      all.set(print.subarray(y * width * 3, (y + 1) * width * 3), ((y + gap) * across + gap + k * (width + gap)) * 3);
  return rgbPng(across, down, all, sizeMm.width / width);
}
