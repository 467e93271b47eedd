import { makeLensBoard } from '../../../../packet/index.ts';
import type { Work } from '../room.ts';

export const lensBoardAnswer: Work<'lensBoard'> = async ({ page, language = 'en' }, room) => {
  const bytes = await makeLensBoard(page, await room.fonts, { language, units: room.last?.job.units ?? 'mm' });
  return { answer: bytes, transfer: [bytes.buffer] };
};
