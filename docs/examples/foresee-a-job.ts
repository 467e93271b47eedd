// Foresees every overlap of a job: the darkest one on each paper, and how sure that is.
import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { plan, prepareDrawings, readJob } from 'laydown';

await prepareDrawings(readFileSync(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')));

const folder = new URL('../../examples/tide-pool/', import.meta.url);
const files = new Map(readdirSync(folder).map((name) => [name, new Uint8Array(readFileSync(new URL(name, folder)))]));
const { papers } = plan(readJob(files));

for (const paper of papers) {
  const darkest = paper.overlaps.reduce((a, b) => (b.lab[0] < a.lab[0] ? b : a));
  console.log(`${paper.name}: the darkest overlap is ${darkest.layers.join(' + ')}, ${darkest.srgb}, within ΔE00 ${darkest.band}`);
}
