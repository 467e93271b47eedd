import { cutFileAnswer } from '../cut/cut-file.ts';
import { bandsAnswer, filmAnswer } from '../cut/film.ts';
import { lensBoardAnswer } from '../cut/lens-board.ts';
import { stockFileAnswer } from '../cut/stock-file.ts';
import { packetAnswer } from '../packet.ts';

/** What leaves the bench for printer and cutter, and what writes it: letters, pages, both languages. */
export const answers = {
  cutFile: cutFileAnswer,
  bands: bandsAnswer,
  film: filmAnswer,
  lensBoard: lensBoardAnswer,
  stockFile: stockFileAnswer,
  packet: packetAnswer,
};
