import type { Job } from '../core/job/index.ts';
import type { Separation, SeparateRequest } from '../core/separate/index.ts';
import { plural } from './words.ts';

/** Fewer pixels of the picture a mm of print than this: coarser than a knife cuts. */
const fewPixels = 1.5;

/** Which part of the picture prints, and how fine it is. */
export function sayPart({ picture, crop, sizeMm }: SeparateRequest): void {
  const { x, y, width, height } = crop ?? { x: 0, y: 0, width: 1, height: 1 };
  const say = (share: number): string => `${Math.round(share * 1000) / 10} %`;
  const part =
    width > 0.999 && height > 0.999
      ? 'all of the picture'
      : `of the picture ${say(width)} of its width and ${say(height)} of its height, from ${say(x)} left and ${say(y)} down`;
  const pxPerMm = (width * picture.width) / sizeMm.width;
  console.log(
    `${sizeMm.width} × ${sizeMm.height} mm: ${part}, ${pxPerMm.toFixed(1)} pixels of it for each mm${pxPerMm < fewPixels ? '. That is coarser than a knife cuts: edges will be soft guesses' : ''}`,
  );
}

/** What came out: figures, runs, what less or more knife would bring. */
export function saySeparation(s: Separation, job: Job, out: string): void {
  const say = (d: { mean: number; median: number; p95: number }): string =>
    `mean ${d.mean.toFixed(1)}, median ${d.median.toFixed(1)}, 95 % within ${d.p95.toFixed(1)}`;
  console.log(
    `${out}: a job of ${plural(runsOf(job), 'run')}; compare/ has the picture, the print and flat inks at the same size, and the print struck through where colours are out of reach and where detail was lost`,
  );
  sayRuns(s, job);
  console.log(`ΔE00 to the picture, in register:        ${say(s.figures.inRegister)}`);
  console.log(`  with layers off by σ ${s.figures.atSigma.sigmaMm.toFixed(2)} mm:            ${say(s.figures.atSigma)}`);
  console.log(
    `  as many flat opaque inks, same knife:  ${say(s.baseline.inRegister)}  (ours is ${(s.figures.inRegister.mean / s.baseline.inRegister.mean).toFixed(2)} of it)`,
  );
  console.log(`    off by as much:                      ${say(s.baseline.atSigma)}`);
  console.log(
    `${s.figures.knifeMetres.toFixed(2)} m to cut, ${plural(s.figures.pieces, 'piece')}, ${plural(s.figures.bridges, 'bridge')}, about ${Math.round(s.figures.minutes)} minutes with the knife`,
  );
  console.log(
    `${(s.outOfReachShare * 100).toFixed(0)} % of the picture is out of these inks' reach; cutting and bridging cost ΔE00 ${s.detailLostDeltaE.toFixed(1)}`,
  );
  console.log(
    'more knife, less error: ' +
      s.curve
        .filter((p) => p.metres > 0)
        .map((p) => `${p.metres.toFixed(1)} m → ${p.meanDeltaE.toFixed(1)} (--price ${p.priceMm})`)
        .join(',  '),
  );
  if (s.stoppedEarly) console.log('Stopped early: this is the best so far.');
}

const runsOf = (job: Job): number => job.layers.filter((layer) => !layer.off).length;

/** First run first, as it is printed. */
function sayRuns(s: Separation, job: Job): void {
  const inkName = (id: string): string => job.inks.find((ink) => ink.id === id)?.name ?? id;
  const live = s.layers.filter((layer) => layer.region.rings.length > 0);
  const added = runsOf(job) > live.length ? 'new run' : 'run';
  for (const { run, side, parts, stencil } of live) {
    const pot = parts.map(({ id, share }) => `${Math.round(share * 100)} % ${inkName(id)}`).join(' + ');
    console.log(
      `  ${added} ${run + 1}  ${side.padEnd(6)}  ${pot}: ${stencil.knife.metres.toFixed(2)} m, ${plural(stencil.knife.pieces, 'piece')}, ${plural(stencil.bridges.length, 'bridge')}`,
    );
  }
}
