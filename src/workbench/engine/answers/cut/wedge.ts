import { wedgeFromFile, wedgeFromPhoto, wedgeFromText, wedgeProblems } from '../../../../core/asks/index.ts';
import { fail } from '../../../../core/problem.ts';
import { name as asName, say } from '../../../../words/one-language.ts';
import { photographOf } from '../ink/photo.ts';
import type { Room, Work } from '../room.ts';

const isPicture = /\.(?:jpe?g|png|webp|tiff?|avif|heic)$/i;

/** What was read of a printed wedge, against paper and solid of the Plan shown. */
export const wedgeAnswer: Work<'wedge'> = async (ask, room) => {
  const plan = planOf(room);
  const at = { paperId: ask.paperId, layerId: ask.layerId };
  if ('text' in ask) {
    const place = say('where.wedge');
    const read = wedgeFromText(plan, at, ask.text, place);
    return { answer: { ...read, problems: wedgeProblems(read, place) }, transfer: [] };
  }
  const place = say('where.file', { file: asName(ask.name) });
  const read = isPicture.test(ask.name)
    ? wedgeFromPhoto(plan, at, await photographOf(ask.bytes, ask.name), place)
    : wedgeFromFile(plan, at, ask.bytes, ask.name);
  return { answer: { ...read, problems: wedgeProblems(read, place) }, transfer: [] };
};

function planOf(room: Room): NonNullable<Room['last']>['plan'] {
  return room.last?.plan ?? fail('no-plan', say('where.workbench'), say('engine.notPlanned'), say('engine.waitAndTry'));
}
