import { basename } from 'node:path';
import type { Crop, Picture } from '../../../core/image/index.ts';
import { fileStem, type Job, type JobBundle } from '../../../core/job/index.ts';
import { fail } from '../../../core/problem.ts';
import { list, name as asName, say } from '../../../words/index.ts';
import type { Call, HelpRow } from '../../command.ts';
import { readFileBytes } from '../../disk/disk.ts';
import { takeJob } from '../../disk/load.ts';
import { readPictureApart } from '../../threads/read-picture.ts';
import { checkFree } from '../../disk/write-folder.ts';
import { placeOf } from '../../options.ts';
import { cropPartOf } from '../../places.ts';
import { option, word } from '../../say/help.ts';
import { textOf } from '../../say/words.ts';
import { imageOf } from './separate-ask.ts';

/** How a command names a picture, the shelf it is printed from, and where the new job goes: said and read in one way. */
export const pictureHelp: readonly HelpRow[] = [
  word('picture', say('help.splitPicture')),
  option('--with', say('help.separateWith'), 'job'),
  option('--out', say('help.separateOut'), 'folder'),
  option('--replace', say('help.separateReplace')),
  option('--crop X,Y,W,H', say('help.separateCrop')),
  option('--width MM', say('help.separateWidth')),
  option('--height MM', say('help.separateHeight')),
];

export const pictureOptions = {
  with: { type: 'string' },
  out: { type: 'string' },
  replace: { type: 'boolean' },
  crop: { type: 'string' },
  width: { type: 'string' },
  height: { type: 'string' },
} as const;

export interface PictureAsked {
  /** The shelf, with all that it carries. */
  readonly bundle: JobBundle;
  readonly picture: Picture;
  readonly crop: Crop | undefined;
  /** The shelf's job under the picture's name, with an image of the picture's own proportions unless a size was asked for. */
  readonly job: Job;
  readonly out: string;
  readonly wish: Parameters<typeof checkFree>[1] & { readonly kind: 'job' };
}

/** @throws ProblemError where picture or shelf is missing, or the new job's place is taken: before any work */
export async function pictureAsk(call: Call): Promise<PictureAsked> {
  const given = call.options;
  const path =
    call.words[0] ?? fail('no-picture', say('where.commandLine'), say('refusals.whichPicture'), say('refusals.namePictureOrJob'));
  const shelf = textOf(given['with']) ?? fail('no-shelf', placeOf('--with'), say('refusals.whoseInks'), say('refusals.nameWith'));
  const bundle = takeJob(shelf);
  const title = basename(path).replace(/\.[^.]*$/, '');
  const out = textOf(given['out']) ?? fileStem(title);
  const wish = { kind: 'job', replace: given['replace'] === true } as const;
  checkFree(out, wish);
  const picture = await readPictureApart(readFileBytes(path), path);
  const part = textOf(given['crop']);
  const crop = part === undefined ? undefined : cropPartOf(part, placeOf('--crop'));
  const asked = { name: title, crop } as Parameters<typeof imageOf>[2];
  const sized =
    given['width'] === undefined && given['height'] === undefined ? { ...given, width: String(bundle.job.image.widthMm) } : given;
  return { bundle, picture, crop, job: { ...bundle.job, title, image: imageOf(sized, bundle.job, asked, picture) }, out, wish };
}

/** One of a few words for an option, as it is written. */
export function oneOf<T extends string>(given: Call['options'], name: string, all: readonly T[]): T | undefined {
  const text = textOf(given[name]);
  if (text === undefined) return undefined;
  return (
    all.find((one) => one === text) ??
    fail(
      'no-such-way',
      placeOf(`--${name}`),
      say('cli.cannotUse', { text: asName(text) }),
      say('cli.useOneOf', { all: list(all.map(asName), 'or') }),
    )
  );
}
