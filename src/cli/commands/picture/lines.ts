import { basename } from 'node:path';
import { askLines } from '../../../core/asks/index.ts';
import { lineWays } from '../../../core/halftone/index.ts';
import { checkJob, fileStem, writeJob, type Job } from '../../../core/job/index.ts';
import { fail } from '../../../core/problem.ts';
import { length, list, name as asName, say, share } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { readFileBytes } from '../../disk/disk.ts';
import { planOf, printProblems, takeJob } from '../../disk/load.ts';
import { readPictureApart } from '../../disk/read-picture.ts';
import { checkFree, writeWhole } from '../../disk/write-folder.ts';
import { placeOf } from '../../options.ts';
import { cropPartOf } from '../../places.ts';
import { sayHere } from '../../reader.ts';
import { option, word } from '../../say/help.ts';
import { sayStencil } from '../../say/say-stencil.ts';
import { idsOf, numberOf, textOf } from '../../say/words.ts';
import { imageOf } from './separate-ask.ts';

export const lines: Command = {
  name: 'lines',
  usage: say('help.linesUsage'),
  summary: say('help.linesSummary'),
  help: [
    word('picture', say('help.splitPicture')),
    option('--with', say('help.separateWith'), 'job'),
    option('--way', say('help.linesWay'), 'way'),
    option('--pitch MM', say('help.linesPitch')),
    option('--angle DEG', say('help.linesAngle')),
    option('--centre X,Y', say('help.linesCentre')),
    option('--ink', say('help.linesInk'), 'name'),
    option('--material', say('help.separateMaterial'), 'material'),
    option('--crop X,Y,W,H', say('help.separateCrop')),
    option('--width MM', say('help.separateWidth')),
    option('--height MM', say('help.separateHeight')),
    option('--after', say('help.linesAfter')),
    option('--out', say('help.separateOut'), 'folder'),
    option('--replace', say('help.separateReplace')),
  ],
  options: {
    with: { type: 'string' },
    way: { type: 'string' },
    pitch: { type: 'string' },
    angle: { type: 'string' },
    centre: { type: 'string' },
    ink: { type: 'string' },
    material: { type: 'string' },
    crop: { type: 'string' },
    width: { type: 'string' },
    height: { type: 'string' },
    after: { type: 'boolean' },
    out: { type: 'string' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    const given = call.options;
    const path =
      call.words[0] ?? fail('no-picture', say('where.commandLine'), say('refusals.whichPicture'), say('refusals.namePictureOrJob'));
    const shelf = textOf(given['with']) ?? fail('no-shelf', placeOf('--with'), say('refusals.whoseInks'), say('refusals.nameWith'));
    const bundle = takeJob(shelf);
    const title = basename(path).replace(/\.[^.]*$/, '');
    const out = textOf(given['out']) ?? fileStem(title);
    const wish = { kind: 'job', replace: given['replace'] === true } as const;
    checkFree(out, wish);
    const way = textOf(given['way']) ?? 'parallel';
    const found = lineWays.find((one) => one === way);
    if (!found)
      fail(
        'no-such-way',
        placeOf('--way'),
        say('cli.cannotUse', { text: asName(way) }),
        say('cli.useOneOf', { all: list(lineWays.map(asName), 'or') }),
      );
    const ink = textOf(given['ink']);
    if (ink !== undefined && !bundle.job.inks.some((k) => k.id === ink))
      fail(
        'no-such-ink',
        placeOf('--ink'),
        say('halftone.noSuchInk', { ink: asName(ink) }),
        say('halftone.nameInks', { ids: idsOf(bundle.job.inks) }),
      );
    const picture = await readPictureApart(readFileBytes(path), path);
    const crop = textOf(given['crop']);
    const part = crop === undefined ? undefined : cropPartOf(crop, placeOf('--crop'));
    const after = given['after'] === true;
    const asked = { name: title, crop: part } as Parameters<typeof imageOf>[2];
    const sized =
      given['width'] === undefined && given['height'] === undefined ? { ...given, width: String(bundle.job.image.widthMm) } : given;
    const job: Job = after ? bundle.job : { ...bundle.job, title, image: imageOf(sized, bundle.job, asked, picture) };
    const answer = askLines(job, picture, {
      way: found,
      pitchMm: given['pitch'] === undefined ? undefined : numberOf(given['pitch'], '--pitch', 5, 0.5, 50),
      angleDeg: given['angle'] === undefined ? undefined : numberOf(given['angle'], '--angle', 0, -360, 360),
      centreMm: centreOf(textOf(given['centre'])),
      ink,
      materialId: textOf(given['material']),
      crop: part,
      after,
    });
    const used = JSON.stringify(answer.job);
    const made = { job: answer.job, attachments: new Map([...bundle.attachments].filter(([name]) => used.includes(JSON.stringify(name)))) };
    const plan = await planOf(made);
    writeWhole(
      out,
      [...writeJob(made)].map(([name, bytes]) => ({ path: name, bytes })),
      wish,
    );
    const layer = plan.layers.find((l) => l.id === answer.layerId);
    console.log(
      sayHere('halftone.linesMade', {
        n: answer.cut.region.rings.length,
        pitch: length(answer.pitchMm, 1),
        lightest: share(answer.cut.lightest, 0),
        darkest: share(answer.cut.darkest, 0),
      }),
    );
    if (layer) for (const line of sayStencil(plan, layer)) console.log(line);
    console.log(sayHere('halftone.linesWritten', { folder: asName(out), layer: asName(answer.layerId) }));
    printProblems([...plan.problems.filter((p) => p.severity === 'error'), ...checkJob(made).filter((p) => p.severity === 'error')]);
    return 0;
  },
};

function centreOf(text: string | undefined): readonly [number, number] | undefined {
  if (text === undefined) return undefined;
  const [x, y, ...more] = text.split(/[,;]/).map(Number);
  if (more.length > 0 || !Number.isFinite(x) || !Number.isFinite(y))
    fail('bad-number', placeOf('--centre'), say('cli.cannotUse', { text: asName(text) }), say('help.linesCentre'));
  return [x, y];
}
