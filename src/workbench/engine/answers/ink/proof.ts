import { pictureUnderLamp } from '../../../../core/asks/index.ts';
import { paintOverPicture } from '../../../../core/print/index.ts';
import { otherPlan } from '../other-plan.ts';
import type { Work } from '../room.ts';
import { codesOfSheet } from './sheet-codes.ts';

/** Picks the nearest pixel of the raster for each pixel of the screen, then paints: what is shown is what is foreseen. */
export const proofAnswer: Work<'proof'> = async ({ paperId, width, height, runs, sheet, lamp, other }, room) => {
  const plan = other ? otherPlan(room) : room.last?.plan;
  const paper = !other && room.quick?.id === paperId ? room.quick : plan?.papers.find((p) => p.id === paperId);
  const over = paper?.overPicture && pictureUnderLamp(paper.overPicture, lamp ?? 'D50');
  const out = new Uint32Array(width * height);
  if (plan && over) {
    const codes = sheet === undefined ? plan.codes : codesOfSheet(plan, sheet);
    const data = new Uint8Array(width * height);
    const ground = new Uint8Array(width * height * 3);
    for (let y = 0; y < height; y++) {
      const row = Math.floor(((y + 0.5) * codes.height) / height) * codes.width;
      for (let x = 0; x < width; x++) {
        const from = row + Math.floor(((x + 0.5) * codes.width) / width);
        const to = y * width + x;
        data[to] = codes.data[from];
        ground[to * 3] = over.ground[from * 3];
        ground[to * 3 + 1] = over.ground[from * 3 + 1];
        ground[to * 3 + 2] = over.ground[from * 3 + 2];
      }
    }
    const bare = new Uint8Array(256);
    const rowOfCode =
      runs === undefined
        ? over.rowOfCode
        : runs === 0
          ? bare
          : (over.progressive[Math.min(runs, over.progressive.length) - 1] ?? over.rowOfCode);
    paintOverPicture({ width, height, mmPerPx: codes.mmPerPx, data }, ground, over.cube, rowOfCode, out);
  }
  return { answer: out, transfer: [out.buffer] };
};
