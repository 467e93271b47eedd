// npm run colours: README's table of foreseen against measured overlaps, from what ships (a Job, plan(), its bands).
import { readFileSync, writeFileSync } from 'node:fs';
import { deltaE00, labFromXyz, type Xyz } from '../src/core/colour/index.ts';
import { chooseAnew } from './colours-choose.ts';
import { allCases, flat, leftOut } from '../test/outside/overprint-table.ts';
import { offset, overlapsOf, patchOf, proof, summary, type Patches } from '../test/outside/overprint-jobs.ts';

/** What a picture program does: multiply the layers' colours. */
function multiplied(patches: Patches, black: boolean): number[] {
  const white = patches.W.xyz;
  return overlapsOf(patches)
    .filter((name) => black || !name.includes('K'))
    .map((name) => {
      const xyz = [0, 1, 2].map((k) => [...name].reduce((v, l) => (v * patches[l].xyz[k]) / white[k], white[k]) / 100) as unknown as Xyz;
      return deltaE00(labFromXyz(xyz), patchOf(patches, name).lab);
    });
}

if (process.argv.includes('--choose')) {
  chooseAnew(Number(process.argv[process.argv.indexOf('--choose') + 1] ?? 60) || 60);
  process.exit(0);
}

const figures = (all: readonly number[]): string =>
  `${(all.reduce((a, b) => a + b, 0) / all.length).toFixed(1)} / ${Math.max(...all).toFixed(1)}`;
const rivals: Record<string, string> = {
  'dry-spectra': figures(multiplied(proof, true)),
  lab: figures(Object.values(offset).flatMap((p) => multiplied(p, false))),
  black: figures(Object.values(offset).flatMap((p) => multiplied(p, true))),
};

const cases = allCases();
const rows = cases.map((one) => {
  const s = summary(flat(one));
  const out = one.sets.length > 1 ? `${(100 * leftOut(one)).toFixed(0)} %` : '–';
  return `| ${one.what} | ${s.mean.toFixed(1)} / ${s.worst.toFixed(1)} over ${s.n} | ${(100 * s.within).toFixed(0)} % | ${out} | ${s.band.toFixed(1)} (${s.wide.toFixed(1)} ×) | ${rivals[one.name] ?? ''} |`;
});
const worst = cases
  .filter((one) => ['lab', 'black', 'two-grounds'].includes(one.name))
  .map((one) => {
    const all = one.sets.flatMap((s) => s.outcomes.map((o) => ({ ...o, set: s.set }))).sort((a, b) => b.off - a.off);
    return `${one.what}: ${all
      .slice(0, 3)
      .map((o) => `${o.set} ${o.name} ${o.off.toFixed(1)} (band ${o.band.toFixed(1)})`)
      .join(', ')}`;
  });
const table = [
  '| known about the inks | mean / worst ΔE00 | within the band | on sets left out | mean band (against the mean error) | multiplying |',
  '|---|---|---|---|---|---|',
  ...rows,
  '',
  `Worst (letters are inks, first down first). ${worst.join('. ')}.`,
].join('\n');
console.log(table);

const readme = new URL('../README.md', import.meta.url);
const text = readFileSync(readme, 'utf8');
const [begin, end] = ['<!-- colours: made by npm run colours -->', '<!-- colours end -->'];
const from = text.indexOf(begin),
  to = text.indexOf(end);
if (from >= 0 && to > from) writeFileSync(readme, `${text.slice(0, from + begin.length)}\n${table}\n${text.slice(to)}`);
