import { basename } from 'node:path';
import { checkJob, writeJob, type Job, type JobBundle, type JobPicture } from '../core/job/index.ts';
import { fileStem } from '../core/job/file-names.ts';
import { newPicture } from '../core/job/picture.ts';
import { jobOfSeparation, pictureRequest } from '../core/asks/index.ts';
import { materialOf, materialsOf } from '../core/plan/parts/stencils.ts';
import { fail } from '../core/problem.ts';
import { readPicture, separate as separatePicture, type Separation } from '../core/separate/index.ts';
import { Cancelled } from '../core/task.ts';
import { prepare } from './assets.ts';
import type { Command } from './command.ts';
import { checkFree, readJobAt, writeWhole } from './folder.ts';
import { hireHands } from './hands.ts';
import { planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { sayPart, saySeparation } from './say-separation.ts';
import { askOf, askOptions, imageOf } from './separate-ask.ts';
import { writeSeparationPictures } from './separation-pictures.ts';
import { readFileBytes, textOf } from './words.ts';

export const separate: Command = {
  name: 'separate',
  usage: 'separate PICTURE --layers N --with JOB [--out DIR] [what is asked of it]',
  summary: 'turns a picture into stencils, inks and an order: a new job',
  help: [
    'PICTURE          JPEG, PNG, WebP or TIFF; left out: the picture that JOB keeps, with all that is asked of it there',
    '                 (marks painted at the bench, too) and what you say here over it',
    '--layers N       how many stencils (1 to 8; default 4)',
    '--with JOB       the job whose inks, papers, materials and register are used',
    '--out DIR        where the new job goes (default: the picture’s name); the job keeps the picture and what was asked',
    '--replace        puts the new job in the place of one that this command made before',
    '',
    'The picture',
    '--crop X,Y,W,H   the part that is printed, in per cent of the picture: from the left, from the top, width, height',
    '--width MM, --height MM   size of the image; of one the other follows the part that is printed. With both, or with neither',
    '                 (the image of the job), the largest piece of that part with these proportions is printed, around its middle',
    '--mark MARK      a place where a wrong colour counts more (four times), less (a quarter) or not at all (none), in per cent of',
    '                 the picture: "more box 20,30,25,40" as for --crop, or "less brush 5 10,20 40,25", a brush 5 wide drawn from',
    '                 place to place. As often as you like; later marks lie over earlier ones',
    '--marks FILE     the same from a text file, a mark a line',
    '',
    'Layers and inks',
    '--pots INK,…     inks to choose from (default: all that were read)',
    '--most-in-pot N  at most so many inks in one pot (1 to 3; default 2)',
    '--layer N=INK@S  layer N, 1 is printed first, is of this ink: 2=brick, or at a strength, 2=brick@40%. As often as you like',
    '--in-place N,…   layers that keep their place in the laydown',
    '--pairs          window and piece of one cut as two layers: half the cutting',
    '--over           the job’s layers are printed already: go on from them',
    '--on PAPER       the paper it is planned on (default: the first)',
    '',
    'Knife and register',
    '--metres M, --minutes M, --pieces N   what the knife may be asked for, all stencils together',
    '--least MM       narrowest line and strip (default: what the material allows)',
    '--price P        instead of metres: what a mm of outline must save, ΔE·mm² (default 2), as the list “more knife, less error” names it',
    '--material NAME  what is cut (default: the job’s first material)',
    '--sigma MM       register error planned for (default: the job’s register)',
    '',
    '--reach HOW      colours out of reach keep their lightness, chroma or contrast, or become the nearest (default)',
    '--seed, --effort same seed, same result; effort 0.3 for a quick look, 3 to search long',
    'Ctrl-C stops the search and takes the best so far.',
  ].join('\n'),
  options: {
    ...askOptions,
    with: { type: 'string' },
    out: { type: 'string' },
    width: { type: 'string' },
    height: { type: 'string' },
    on: { type: 'string' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    const shelf =
      textOf(call.options['with']) ??
      fail('no-shelf', '--with', 'Whose inks are to be used?', 'Name a job with --with: its inks, papers and materials are the shelf.');
    const bundle = readJobAt(shelf);
    const taken = takeInHand(call.words[0], bundle);
    const ask = askOf(call.options, bundle.job, taken.ask);
    const out = textOf(call.options['out']) ?? (call.words[0] === undefined ? fileStem(ask.name) : ask.name),
      replace = call.options['replace'] === true;
    checkFree(out, replace);
    await prepare();
    const picture = await readPicture(taken.bytes, taken.place);
    const job: Job = { ...bundle.job, image: imageOf(call.options, bundle.job, ask, picture), picture: ask };
    const attachments = new Map(bundle.attachments).set(ask.file, taken.bytes);
    const over = ask.over ? (await planOf({ job, attachments })).layers : undefined;
    const request = pictureRequest(job, ask, picture, { paperId: textOf(call.options['on']), over });
    sayPart(request);
    const separation = await watch(separatePicture, request);
    const next = jobOfSeparation(job, separation, {
      title: ask.name,
      materialId: materialOf(materialsOf(job), ask.material).id,
      after: ask.over,
    });
    // Drawings that the new job does not use stay where they are.
    const said = JSON.stringify(next);
    const made: JobBundle = { job: next, attachments: new Map([...attachments].filter(([name]) => said.includes(JSON.stringify(name)))) };
    writeWhole(
      out,
      [...[...writeJob(made)].map(([name, bytes]) => ({ path: name, bytes })), ...writeSeparationPictures(separation)],
      replace,
    );
    saySeparation(separation, next, out);
    printProblems([...separation.problems, ...checkJob(made).filter((p) => p.severity === 'error')], console.log);
    return 0;
  },
};

/** The picture named, with nothing asked of it yet; or the one the job keeps, as it is asked there. */
function takeInHand(
  path: string | undefined,
  { job, attachments }: JobBundle,
): { readonly bytes: Uint8Array; readonly place: string; readonly ask: JobPicture } {
  if (path !== undefined) {
    const others = new Map([...attachments].filter(([name]) => name !== job.picture?.file));
    return { bytes: readFileBytes(path), place: path, ask: newPicture(basename(path), others) };
  }
  const ask =
    job.picture ??
    fail('no-picture', 'the command', 'Which picture?', 'Name a JPEG, PNG, WebP or TIFF file, or with --with a job that keeps one.');
  const bytes =
    attachments.get(ask.file) ??
    fail('picture-missing', ask.file, 'The picture is not in the job’s folder any more.', 'Put the file back there, or name the picture.');
  return { bytes, place: ask.file, ask };
}

async function watch(work: typeof separatePicture, request: Parameters<typeof separatePicture>[0]): Promise<Separation> {
  let stop = false;
  const onStop = (): void => {
    stop = true;
  };
  process.once('SIGINT', onStop);
  const bar = process.stderr.isTTY;
  const hands = hireHands();
  const drafts = work(
    request,
    {
      report(share, note) {
        if (bar)
          process.stderr.write(
            `\r${Math.round(share * 100)
              .toString()
              .padStart(3)} %  ${(note ? tellHere(note) : '').padEnd(48)}`,
          );
      },
      async pause() {
        await new Promise((go) => setImmediate(go));
        if (stop) throw new Cancelled();
      },
    },
    hands,
  );
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
