import { boardAsStored, cameraFrom, jobWithCamera, sameCamera, writeCameras } from '../../../core/asks/index.ts';
import { boardSeen, type BoardSeen } from '../../../core/form/index.ts';
import { takenWith, type TakenWith } from '../../../core/image/index.ts';
import type { JobCamera } from '../../../core/job/index.ts';
import { fail, problem, type Problem } from '../../../core/problem.ts';
import { makeLensBoard } from '../../../packet/index.ts';
import { figure, length, name as asName, say } from '../../../words/index.ts';
import { readFonts } from '../../assets.ts';
import type { Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { printProblems, takeJob } from '../../disk/load.ts';
import { photoOf } from '../../disk/photo-of.ts';
import { readPictureApart } from '../../threads/read-picture.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { checkFree } from '../../disk/write-folder.ts';
import { writeJobTo } from '../../disk/write-job.ts';
import { placeOf } from '../../options.ts';
import { readerOnPaper, sayHere } from '../../reader.ts';
import { option, replaceFile, word } from '../../say/help.ts';
import { textOf } from '../../say/words.ts';

export const lens: Command = {
  name: 'lens',
  usage: say('help.lensUsage'),
  summary: say('help.lensSummary'),
  help: [
    say('help.lensText'),
    word('photo', say('help.lensPhotos')),
    option('--board a4|letter', say('help.lensBoard')),
    option('--with', say('help.lensWith'), 'job'),
    option('--out', say('help.lensOut'), 'file'),
    replaceFile,
  ],
  prints: true,
  options: { board: { type: 'string' }, with: { type: 'string' }, out: { type: 'string' }, replace: { type: 'boolean' } },
  async run(call) {
    const out = textOf(call.options['out']) ?? fail('no-file', placeOf('--out'), say('refusals.whichFile'), say('refusals.writeOut')),
      replace = call.options['replace'] === true;
    const into = textOf(call.options['with']);
    const bundle = into === undefined ? undefined : takeJob(into);
    if (bundle) checkFree(out, { kind: 'job', replace });
    else mustBeNew(out, replace);
    const board = textOf(call.options['board']);
    if (board !== undefined) {
      if (board !== 'a4' && board !== 'letter')
        fail('no-such-page', placeOf('--board'), say('cli.cannotUse', { text: asName(board) }), say('refusals.boardPages'));
      const bytes = await makeLensBoard(board, readFonts(), readerOnPaper(call.language));
      writeNew(out, replace, () => bytes);
      console.log(sayHere('inkAnswers.boardMade', { file: asName(out) }));
      return 0;
    }
    if (call.words.length === 0) fail('no-photo', say('where.commandLine'), say('cli.whichPhoto'), say('cli.namePicture'));
    const { boards, taken } = await boardsIn(call.words);
    const found = taken && cameraFrom(boards, taken);
    if (!found) return fail('no-lens', say('where.commandLine'), say('form.noBoard'), say('form.showBoard'));
    if (boards.length < 3) console.log(sayHere('inkAnswers.fewBoards', { n: boards.length }));
    if (bundle) writeJobTo(out, { ...bundle, job: jobWithCamera(bundle.job, found.camera) }, replace);
    else writeNew(out, replace, () => writeCameras([found.camera]));
    console.log(sayHere('inkAnswers.lensRead', { file: asName(out), n: boards.length, off: figure(found.offPx, 2) }));
    console.log(sayCamera(found.camera));
    return 0;
  },
};

/** The boards in these photographs, which must be of one camera: that of the first with a board in it. */
async function boardsIn(paths: readonly string[]): Promise<{ readonly boards: readonly BoardSeen[]; readonly taken?: TakenWith }> {
  const boards: BoardSeen[] = [];
  const problems: Problem[] = [];
  let first: { readonly taken: TakenWith; readonly board: BoardSeen } | undefined;
  for (const path of paths) {
    const bytes = readFileBytes(path),
      taken = takenWith(bytes);
    const board = boardSeen(photoOf(await readPictureApart(bytes, path)));
    if (!board) problems.push(problem('warning', 'photo-no-board', fileAt(path), say('form.noBoard'), say('form.showBoard')));
    else if (first && !sameCamera(first.taken, first.board, taken, board))
      problems.push(problem('warning', 'another-camera', fileAt(path), say('form.anotherCamera'), say('form.oneCamera')));
    else {
      first ??= { taken, board };
      boards.push(boardAsStored(board, taken));
    }
  }
  printProblems(problems);
  return { boards, taken: first?.taken };
}

/** Which camera it is, for whoever reads. */
export function sayCamera({ name, focalMm }: JobCamera): string {
  if (name === undefined) return sayHere('inkAnswers.cameraUnknown');
  return focalMm === undefined
    ? sayHere('inkAnswers.cameraIs', { camera: asName(name) })
    : sayHere('inkAnswers.cameraZoomed', { camera: asName(name), focal: length(focalMm, 1) });
}
