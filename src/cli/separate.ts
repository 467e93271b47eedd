import { basename, resolve } from 'node:path';
import { writeJob, type Job, type JobBundle } from '../core/job/index.ts';
import { inkBench, jobOfSeparation, separateRequest } from '../core/plan/asks/index.ts';
import { plan } from '../core/plan.ts';
import { fail } from '../core/problem.ts';
import { readPicture, separate as separatePicture, type Separation } from '../core/separate/index.ts';
import { Cancelled } from '../core/task.ts';
import { prepare } from './assets.ts';
import type { Command } from './command.ts';
import { checkFree, readJobAt, writeWhole } from './folder.ts';
import { hireHands } from './hands.ts';
import { printProblems } from './load.ts';
import { writeSeparationPictures } from './separation-pictures.ts';
import { numberOf, readFileBytes, textOf } from './words.ts';

export const separate: Command = {
  name: 'separate',
  usage: 'separate PICTURE --layers N --with JOB [--out DIR] [--width MM] [--metres M] [--minutes M] [--pieces N] [--sigma MM] [--pots INK,…] [--on PAPER] [--pairs] [--over] [--reach HOW] [--seed N] [--effort E] [--replace]',
  summary: 'turns a picture into stencils, inks and an order: a new job',
  help: [
    'PICTURE          JPEG, PNG, WebP or TIFF',
    '--layers N       how many stencils (1 to 8)',
    '--with JOB       the job whose inks, papers, materials and register are used',
    '--out DIR        where the new job goes (default: the picture’s name)',
    '--width MM       width of the image; the height follows the picture (default: the image of the job)',
    '--metres, --minutes, --pieces   what the knife may be asked for, all stencils together',
    '--sigma MM       register error planned for (default: the job’s register)',
    '--pots INKS      inks to choose from (default: all that were read)',
    '--pairs          window and piece of one cut as two layers: half the cutting',
    '--replace        puts the new job in the place of one that this command made before',
    '--over           the job’s layers are printed already: go on from them',
    '--reach HOW      colours out of reach keep their lightness, chroma or contrast, or become the nearest (default)',
    '--seed, --effort same seed, same result; effort 0.3 for a quick look, 3 to search long',
    'Ctrl-C stops the search and takes the best so far.',
  ].join('\n'),
  options: {
    layers: { type: 'string' }, with: { type: 'string' }, out: { type: 'string' }, width: { type: 'string' }, metres: { type: 'string' }, minutes: { type: 'string' }, pieces: { type: 'string' },
    sigma: { type: 'string' }, pots: { type: 'string' }, on: { type: 'string' }, pairs: { type: 'boolean' }, over: { type: 'boolean' }, reach: { type: 'string' }, seed: { type: 'string' }, effort: { type: 'string' }, replace: { type: 'boolean' },
  },
  async run(call) {
    const path = call.words[0] ?? fail('no-picture', 'the command', 'Which picture?', 'Name a JPEG, PNG, WebP or TIFF file.');
    const shelf = textOf(call.options['with']) ?? fail('no-shelf', '--with', 'Whose inks are to be used?', 'Name a job with --with: its inks, papers and materials are the shelf.');
    const title = basename(path).replace(/\.[^.]+$/, '');
    const out = textOf(call.options['out']) ?? resolve(title), replace = call.options['replace'] === true;
    checkFree(out, replace);
    await prepare();
    const bundle = readJobAt(shelf);
    const picture = await readPicture(readFileBytes(path), path);
    const width = call.options['width'] === undefined ? undefined : numberOf(call.options['width'], '--width', 180, 10, 2000);
    const job = width === undefined ? bundle.job : { ...bundle.job, image: { ...bundle.job.image, widthMm: width, heightMm: Math.round((width * picture.height) / picture.width) } };
    const limit = (name: 'metres' | 'minutes' | 'pieces'): number | undefined => (call.options[name] === undefined ? undefined : numberOf(call.options[name], `--${name}`, 1, 0.01, 10000));
    const reach = textOf(call.options['reach']) ?? 'nearest';
    if (reach !== 'nearest' && reach !== 'lightness' && reach !== 'chroma' && reach !== 'contrast') fail('bad-reach', '--reach', `“${reach}” is not among the ways.`, 'Use lightness, chroma, contrast or nearest.');
    const over = call.options['over'] === true;
    const request = separateRequest(job, {
      picture, layers: layersOf(textOf(call.options['layers'])), paperId: textOf(call.options['on']), pots: potsNamed(job, textOf(call.options['pots'])),
      knife: { metres: limit('metres'), minutes: limit('minutes'), pieces: limit('pieces') }, cutPairs: call.options['pairs'] === true, intent: reach,
      registerSigmaMm: call.options['sigma'] === undefined ? undefined : numberOf(call.options['sigma'], '--sigma', 0, 0, 5),
      over: over ? plan({ ...bundle, job }) : undefined, seed: numberOf(call.options['seed'], '--seed', job.seed, -2147483648, 2147483647), effort: numberOf(call.options['effort'], '--effort', 1, 0.05, 20),
    });
    const separation = await watch(separatePicture, request);
    const next = jobOfSeparation(job, separation, { title, after: over });
    // Drawings that the new job does not use stay where they are.
    const said = JSON.stringify(next);
    const made: JobBundle = { job: next, attachments: new Map([...bundle.attachments].filter(([name]) => said.includes(JSON.stringify(name)))) };
    writeWhole(out, [...[...writeJob(made)].map(([name, bytes]) => ({ path: name, bytes })), ...writeSeparationPictures(separation)], replace);
    sayFigures(separation, inkBench(made.job).job.layers.length, out);
    printProblems(separation.problems, console.log);
    return 0;
  },
};

/** How many is too few or too many is said by the work itself; here only what is no number. */
function layersOf(text: string | undefined): number {
  const layers = text === undefined ? 4 : Number(text);
  if (!Number.isInteger(layers)) fail('bad-layers', '--layers', `“${text}” is no number of layers.`, 'Give a whole number from 1 to 8.');
  return layers;
}

function potsNamed(job: Job, text: string | undefined): string[] | undefined {
  const pots = text?.split(',').map((w) => w.trim()).filter((w) => w !== '');
  const unknown = pots?.filter((id) => !job.inks.some((ink) => ink.id === id)) ?? [];
  if (unknown.length > 0) fail('unknown-ink', '--pots', `${unknown.map((id) => `“${id}”`).join(', ')}: no such ink in this job.`, `Choose among ${job.inks.map((ink) => ink.id).join(', ')}.`);
  return pots;
}

async function watch(work: typeof separatePicture, request: Parameters<typeof separatePicture>[0]): Promise<Separation> {
  let stop = false;
  const onStop = (): void => { stop = true; };
  process.once('SIGINT', onStop);
  const bar = process.stderr.isTTY;
  const hands = hireHands();
  const drafts = work(request, {
    report(share, note) { if (bar) process.stderr.write(`\r${Math.round(share * 100).toString().padStart(3)} %  ${(note ?? '').padEnd(48)}`); },
    async pause() {
      await new Promise((go) => setImmediate(go));
      if (stop) throw new Cancelled();
    },
  }, hands);
  try {
    for (;;) {
      const step = await drafts.next();
      if (step.done) return step.value;
    }
  } finally {
    if (bar) process.stderr.write('\n');
    process.removeListener('SIGINT', onStop);
    hands?.dismiss();
  }
}

function sayFigures(s: Separation, runs: number, out: string): void {
  const say = (d: { mean: number; median: number; p95: number }): string => `mean ${d.mean.toFixed(1)}, median ${d.median.toFixed(1)}, 95 % within ${d.p95.toFixed(1)}`;
  console.log(`${out}: a job of ${runs} runs; compare/ has the picture, the print and the flat inks side by side`);
  console.log(`ΔE00 to the picture, in register:        ${say(s.figures.inRegister)}`);
  console.log(`  with layers off by σ ${s.figures.atSigma.sigmaMm.toFixed(2)} mm:            ${say(s.figures.atSigma)}`);
  console.log(`  as many flat opaque inks, same knife:  ${say(s.baseline.inRegister)}  (ours is ${(s.figures.inRegister.mean / s.baseline.inRegister.mean).toFixed(2)} of it)`);
  console.log(`${s.figures.knifeMetres.toFixed(2)} m to cut, ${s.figures.pieces} pieces, ${s.figures.bridges} bridges, about ${Math.round(s.figures.minutes)} minutes with the knife`);
  console.log(`${(s.outOfReachShare * 100).toFixed(0)} % of the picture is out of these inks' reach; cutting and bridging cost ΔE00 ${s.detailLostDeltaE.toFixed(1)}`);
  console.log('more knife, less error: ' + [...new Set(s.curve.map((p) => `${p.metres.toFixed(1)} m → ${p.meanDeltaE.toFixed(1)}`))].join(',  '));
  if (s.stoppedEarly) console.log('Stopped early: this is the best so far.');
}
