// npm run corpus [-- EVERY [FOLDER [FROM]]]: every drawing of two whole icon packages, and of the coloured clip art of the Debian package
// openclipart-svg (0.18, public domain) where that is installed, becomes a form and both its stencils; or those of a FOLDER and all in
// it, such as that package unpacked. EVERY: each so-manieth, from number FROM on. Prints how many worked, how many were refused with
// which message, the slowest; fails on a crash, on more than 5 s for a stencil, on a refusal without a way out, or on a certificate
// that a flood fill of the written outline contradicts, or the look of other libraries at its least widths (test/outside/stencil-widths.ts).
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { judgeDrawing, type LookAtWritten, type WaysOut } from '../test/corpus.ts';
import { narrowPlaces, prepareVision } from '../test/outside/stencil-widths.ts';
import { prepareDrawings } from '../src/core/form/index.ts';
import { offersFor } from '../src/core/plan/parts/cut/offers.ts';
import { defaultMaterials } from '../src/core/stencil/index.ts';

await prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm'));
await prepareVision();
/** Time of the processor, not of the clock: other work on the machine must not look like a hang. */
const spentMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
let lookedMs = 0;
const waysOutMs: number[] = [];
const look: LookAtWritten = (d, cut, promised) => {
  const start = spentMs();
  const found = narrowPlaces(d, cut, promised).map(
    (n) => `${n.what} ${n.kind} of ${n.widthMm.toFixed(2)} mm at ${n.atMm.map((v) => v.toFixed(1)).join(', ')}`,
  );
  lookedMs += spentMs() - start;
  return found;
};
const waysOut: WaysOut = (asked, refused) => {
  const start = spentMs();
  const { length } = offersFor(asked, defaultMaterials, refused);
  const ms = spentMs() - start;
  lookedMs += ms;
  waysOutMs.push(ms);
  return length;
};
const every = Math.max(1, Number(process.argv[2] ?? 1) || 1);
const refused = new Map<string, string[]>();
let worked = 0,
  whole = 0,
  mended = 0,
  tried = 0,
  failures = 0;
const slow: { name: string; ms: number }[] = [];
const own = process.argv[3],
  from = Math.max(0, Number(process.argv[4] ?? 0) || 0);
const clipArt = '/usr/share/openclipart/svg/';
const known = ['node_modules/bootstrap-icons/icons/', 'node_modules/lucide-static/icons/', clipArt];
if (!own && !existsSync(clipArt)) console.error('Without clip art: apt-get install openclipart-svg, or name its folder.');
for (const folder of own ? [`${own}/`] : known.filter((one) => existsSync(one))) {
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .sort()
    .filter((file) => file.endsWith('.svg'))
    .filter((_, i) => i % every === from % every)) {
    if (++tried % 500 === 0) console.error(`${tried} drawings …`);
    const start = spentMs();
    lookedMs = 0;
    try {
      const found = judgeDrawing(readFileSync(folder + name, 'utf8'), name, look, waysOut);
      if (found.refused) refused.set(found.refused, [...(refused.get(found.refused) ?? []), name]);
      else worked++;
      whole += found.whole;
      mended += found.mended;
      for (const side of found.stuck) {
        failures++;
        console.error(`NO WAY OUT ${name}: ${side}`);
      }
      if (found.lie) {
        failures++;
        console.error(`FALSE CERTIFICATE ${name}: ${found.lie}`);
      }
    } catch (error) {
      failures++;
      console.error(`CRASH ${name}: ${String(error)}`);
    }
    // A window and a piece, without the other libraries' look and the ways out.
    const ms = (spentMs() - start - lookedMs) / 2;
    slow.push({ name, ms });
    if (ms > 5000) {
      failures++;
      console.error(`HANG ${name}: ${(ms / 1000).toFixed(1)} s`);
    }
  }
}
slow.sort((a, b) => b.ms - a.ms);
console.log(
  `${tried} drawings: ${worked} worked, ${tried - worked} refused or not held; ${whole} of ${2 * tried} stencils hold, ${mended} of them after mending`,
);
for (const [message, names] of [...refused].sort((a, b) => b[1].length - a[1].length))
  console.log(`  ${String(names.length).padStart(5)}  ${message} (${names.slice(0, 4).join(', ')}${names.length > 4 ? ', …' : ''})`);
console.log(
  `slowest: ${slow
    .slice(0, 5)
    .map((s) => `${s.name} ${s.ms.toFixed(0)} ms`)
    .join(', ')}; median ${slow[slow.length >> 1].ms.toFixed(0)} ms`,
);
if (waysOutMs.length > 0) console.log(`ways out of ${waysOutMs.length} refusals: slowest ${Math.max(...waysOutMs).toFixed(0)} ms`);
process.exit(failures ? 1 : 0);
