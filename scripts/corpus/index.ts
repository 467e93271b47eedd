// npm run corpus: every drawing of two whole icon packages, and of the coloured clip art of the Debian package openclipart-svg
// (0.18, public domain) where that is installed, becomes a form and both its stencils. Prints how many worked, how many were
// refused with which message, the slowest; fails on a crash, on more than 5 s for a stencil, on a refusal without a way out, or on
// a certificate that a flood fill of the written outline contradicts, or the look of other libraries at its least widths
// (test/outside/stencil-widths.ts).
//   --folder F         all drawings in F and below it, such as that package unpacked
//   --every N --from M each N-th, from number M on
//   --seed S --count K K of them, drawn by chance
//   --pieces N         each N-th as piece too (else all of them); as window each is
//   --record FILE      one line a drawing; what stands there already is not judged again
//   --seconds T        ends after T seconds of the processor: a whole run in short ones, with --record
//   --sheet PNG        the twenty hardest as one picture
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { judgeDrawing, spentMs, type LookAtWritten, type WaysOut } from '../../test/corpus.ts';
import { narrowPlaces, prepareVision } from '../../test/outside/stencil-widths.ts';
import { prepareDrawings } from '../../src/core/form/index.ts';
import { offersFor } from '../../src/core/plan/parts/cut/offers.ts';
import { defaultMaterials } from '../../src/core/stencil/index.ts';
import { chosen, type Drawing } from './choose.ts';
import { hardestSheet } from './sheet.ts';
import { Record, type Line } from './record.ts';
import { failuresOf, summary } from './summary.ts';

const { values: asked } = parseArgs({
  options: {
    folder: { type: 'string' },
    every: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
    seed: { type: 'string' },
    count: { type: 'string', default: 'Infinity' },
    pieces: { type: 'string', default: '1' },
    record: { type: 'string' },
    seconds: { type: 'string', default: 'Infinity' },
    sheet: { type: 'string' },
  },
});

await prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm'));
await prepareVision();

const look: LookAtWritten = (d, cut, promised) =>
  narrowPlaces(d, cut, promised).map(
    (n) => `${n.what} ${n.kind} of ${n.widthMm.toFixed(2)} mm at ${n.atMm.map((v) => v.toFixed(1)).join(', ')}`,
  );
const waysOut: WaysOut = (request, refused) => offersFor(request, defaultMaterials, refused).length;

function judged({ name, path }: Drawing, pieceToo: boolean): Line {
  try {
    return { name, path, judged: judgeDrawing(readFileSync(path, 'utf8'), name, { look, waysOut, pieceToo }) };
  } catch (error) {
    return { name, path, crash: String(error) };
  }
}

const drawings = chosen({
  folder: asked.folder,
  every: Math.max(1, Number(asked.every)),
  from: Number(asked.from),
  seed: asked.seed === undefined ? undefined : Number(asked.seed),
  count: Number(asked.count),
});
const record = new Record(asked.record);
const most = 1000 * Number(asked.seconds);
const everyPiece = Math.max(1, Number(asked.pieces));
for (const [i, drawing] of drawings.entries()) {
  if (record.lines.has(drawing.path)) continue;
  if (spentMs() > most) break;
  record.add({ ...drawing, begun: true });
  const line = judged(drawing, i % everyPiece === 0);
  record.add(line);
  for (const failure of failuresOf(line)) console.error(failure);
  // The canvas library lets go of its pictures only between turns: without one a long run holds them all.
  await new Promise(setImmediate);
}
const lines = drawings.map(({ path }) => record.lines.get(path)).filter((line) => line !== undefined);
console.log(summary(lines, drawings.length));
if (asked.sheet) hardestSheet(lines, asked.sheet);
process.exit(lines.some((line) => failuresOf(line).length > 0) ? 1 : 0);
