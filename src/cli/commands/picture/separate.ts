import { basename } from 'node:path';
import { checkJob, writeJob, type Job, type JobBundle, type JobPicture, fileStem, newPicture } from '../../../core/job/index.ts';
import { jobOfSeparation, pictureRequest } from '../../../core/asks/index.ts';
import { materialOf, materialsOf } from '../../../core/plan/index.ts';
import { fail } from '../../../core/problem.ts';
import { say, share as shareOf, tell } from '../../../words/index.ts';
import { runNames, separate as separatePicture, type Draft, type Separation } from '../../../core/separate/index.ts';
import { Cancelled, quietTask } from '../../../core/task.ts';
import type { Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { hireHands } from '../../threads/hands.ts';
import { option, word } from '../../say/help.ts';
import { planOf, printProblems, takeJob } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { readerOnPaper, sayHere, showHere } from '../../reader.ts';
import { sayPart, saySeparation } from '../../say/say-separation.ts';
import { askOf, askOptions, imageOf } from './separate-ask.ts';
import { drawWays } from './separate-ways.ts';
import { flatPicture, printPictures } from './separation-pictures.ts';
import { filled } from '../../say/table.ts';
import { textOf } from '../../say/words.ts';
import { mustBeNew } from '../../disk/write-file.ts';
import { checkFree, writeWhole } from '../../disk/write-folder.ts';
import { prepareFaceFinding } from '../../assets.ts';
import { readPictureApart } from '../../threads/read-picture.ts';

export const separate: Command = {
  name: 'separate',
  usage: say('help.separateUsage'),
  summary: say('help.separateSummary'),
  help: [
    word('picture', say('help.separatePicture')),
    option('--with', say('help.separateWith'), 'job'),
    option('--layers N', say('help.separateLayers')),
    option('--out', say('help.separateOut'), 'folder'),
    option('--replace', say('help.separateReplace')),
    { heading: say('help.thePicture') },
    option('--crop X,Y,W,H', say('help.separateCrop')),
    option('--width MM', say('help.separateWidth')),
    option('--height MM', say('help.separateHeight')),
    option('--mark', say('help.separateMark'), 'mark'),
    option('--marks', say('help.separateMarks'), 'file'),
    option('--veil P', say('help.separateVeil')),
    { heading: say('help.layersAndInks') },
    option('--pots', say('help.separatePots'), 'inks'),
    option('--most-in-pot N', say('help.separateMostInPot')),
    option('--layer', say('help.separateLayer'), 'layerInk'),
    option('--in-place N,…', say('help.separateInPlace')),
    option('--way', say('help.separateWay'), 'way'),
    option('--taken-as', say('help.separateTakenAs'), 'way'),
    option('--key', say('help.separateKey')),
    option('--ways', say('help.separateWays'), 'file'),
    option('--pairs', say('help.separatePairs')),
    option('--over', say('help.separateOver')),
    option('--on', say('help.separateOn'), 'paper'),
    { heading: say('help.knifeAndRegister') },
    option('--metres M', say('help.separateMetres')),
    option('--minutes M', say('help.separateMinutes')),
    option('--pieces N', say('help.separatePieces')),
    option('--least MM', say('help.separateLeast')),
    option('--price P', say('help.separatePrice')),
    option('--material', say('help.separateMaterial'), 'material'),
    option('--sigma MM', say('help.separateSigma')),
    { heading: say('help.theSearch') },
    say('help.separateStop'),
    option('--reach', say('help.separateReach'), 'way'),
    option('--effort N', say('help.separateEffort')),
    option('--seed N', say('help.separateSeed')),
  ],
  options: {
    ...askOptions,
    with: { type: 'string' },
    out: { type: 'string' },
    ways: { type: 'string' },
    width: { type: 'string' },
    height: { type: 'string' },
    on: { type: 'string' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    const shelf = textOf(call.options['with']) ?? fail('no-shelf', placeOf('--with'), say('refusals.whoseInks'), say('refusals.nameWith'));
    const bundle = takeJob(shelf);
    const taken = takeInHand(call.words[0], bundle);
    const ask = askOf(call.options, bundle.job, taken.ask);
    const out = textOf(call.options['out']) ?? (call.words[0] === undefined ? fileStem(ask.name) : ask.name),
      replace = call.options['replace'] === true;
    const wish = { kind: 'job', replace } as const,
      drawn = textOf(call.options['ways']);
    if (drawn === undefined) checkFree(out, wish);
    else mustBeNew(drawn, replace);
    const picture = await readPictureApart(taken.bytes, taken.place);
    const job: Job = { ...bundle.job, image: imageOf(call.options, bundle.job, ask, picture), picture: ask };
    const attachments = new Map(bundle.attachments).set(ask.file, taken.bytes);
    const over = ask.over ? (await planOf({ job, attachments })).layers : undefined;
    prepareFaceFinding();
    const request = pictureRequest(job, ask, picture, { paperId: textOf(call.options['on']), over });
    for (const line of sayPart(request)) console.log(line);
    if (drawn !== undefined) {
      await drawWays(request, drawn, replace, quietTask);
      return 0;
    }
    let pictures: ReturnType<typeof printPictures> | undefined;
    const separation = await watch(separatePicture, request, ({ cut }) => {
      // Flat inks are still made beside it.
      if (cut) pictures = printPictures(cut);
    });
    const names = runNames(separation).map((one) => tell(one, readerOnPaper(undefined, job)));
    const next = jobOfSeparation(job, separation, names, {
      title: ask.name,
      materialId: materialOf(materialsOf(job), ask.material).id,
      after: ask.over,
    });
    // Drawings that the new job does not use stay where they are.
    const said = JSON.stringify(next);
    const made: JobBundle = { job: next, attachments: new Map([...attachments].filter(([name]) => said.includes(JSON.stringify(name)))) };
    writeWhole(
      out,
      [
        ...[...writeJob(made)].map(([name, bytes]) => ({ path: name, bytes })),
        ...(separation.stoppedEarly || !pictures ? printPictures(separation) : pictures),
        flatPicture(separation),
      ],
      wish,
    );
    for (const line of saySeparation(separation, next, out)) console.log(line);
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
  const ask = job.picture ?? fail('no-picture', say('where.commandLine'), say('refusals.whichPicture'), say('refusals.namePictureOrJob'));
  const bytes =
    attachments.get(ask.file) ?? fail('picture-missing', fileAt(ask.file), say('refusals.pictureGone'), say('refusals.putBack'));
  return { bytes, place: ask.file, ask };
}

/** Heard so often: who stops, and who is done with an errand. */
const betweenBreathsMs = 5;

async function watch(
  work: typeof separatePicture,
  request: Parameters<typeof separatePicture>[0],
  onDraft: (draft: Draft) => void,
): Promise<Separation> {
  let stop = false,
    lastBreath = 0;
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
        if (bar) {
          const line = note ? sayHere('inkAnswers.progress', { share: shareOf(share, 0), note }) : showHere(shareOf(share, 0));
          process.stderr.write(`\r${filled(line, 60)}`);
        }
      },
      async pause() {
        if (performance.now() - lastBreath < betweenBreathsMs) return;
        await new Promise((go) => setImmediate(go));
        lastBreath = performance.now();
        if (stop) throw new Cancelled();
      },
    },
    hands,
  );
  try {
    for (;;) {
      const step = await drafts.next();
      if (step.done) return step.value;
      onDraft(step.value);
    }
  } finally {
    if (bar) process.stderr.write('\n');
    process.removeListener('SIGINT', onStop);
    hands?.dismiss();
  }
}
