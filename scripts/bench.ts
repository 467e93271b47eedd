// npm run bench [-- NAME …]: runs bench/*.bench.ts (those whose names contain NAME) and prints medians and ratios.
// Without a name it leaves `separate` and `page` out: they have commands of their own.
import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { BenchRow } from '../bench/row.ts';

const folder = fileURLToPath(new URL('../bench/', import.meta.url));
const wanted = process.argv.slice(2);
const files = readdirSync(folder)
  .filter((file) => file.endsWith('.bench.ts'))
  .filter((file) => (wanted.length ? wanted.some((name) => file.includes(name)) : !/separate|page/.test(file)));

const ms = (value: number): string => (value < 10 ? value.toFixed(2) : value.toFixed(0)).padStart(8);
console.log(`node ${process.versions.node}, ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown'}`);
for (const file of files) {
  const bench = (await import(pathToFileURL(folder + file).href)) as { title: string; run: () => Promise<BenchRow[]> };
  console.log(`\n${bench.title}`);
  for (const row of await bench.run()) {
    const rival =
      row.rivalMs === undefined ? '' : `  ${ms(row.rivalMs)} ms ${row.rivalName ?? ''}  ratio ${(row.medianMs / row.rivalMs).toFixed(2)}`;
    console.log(`  ${row.name.padEnd(58)} ${ms(row.medianMs)} ms${rival}${row.note ? `  (${row.note})` : ''}`);
  }
}
