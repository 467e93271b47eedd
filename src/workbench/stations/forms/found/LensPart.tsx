import { faultsOf } from '../../../engine/faults.ts';
import type { TraceAnswer } from '../../../engine/protocol.ts';
import type { Bench } from '../../../store/bench.ts';
import { download } from '../../../store/keep/files.ts';
import { language, words } from '../../../store/words.ts';
import { say } from '../../../../words/one-language.ts';
import { keepLens, keptBoards, keptLens } from '../../../store/keep/lens.ts';

/** With a photograph of a board: the board to print, and the lens that was read, to be kept. */
export function BoardLens({ bench, found }: { readonly bench: Bench; readonly found: TraceAnswer | null }) {
  const w = words().forms;
  const print = async (page: 'a4' | 'letter'): Promise<void> => {
    try {
      download(await bench.ask('lensBoard', { page, language: language.value }), `board-${page}.pdf`, 'application/pdf');
      bench.announce(w.boardReady);
    } catch (error) {
      bench.refuse(faultsOf(error, say('packet.lensBoard')));
    }
  };
  const boards = found?.boards ?? [];
  const isKept = keptLens.value !== null && boards.length > 0 && boards.length === keptBoards.value.length;
  return (
    <>
      <p class="num-note">{w.boardHow}</p>
      <p class="row">
        {(['a4', 'letter'] as const).map((page) => (
          <button key={page} type="button" class="button button-line" onClick={() => void print(page)}>
            {w.printBoard(page === 'a4' ? 'A4' : 'Letter')}
          </button>
        ))}
      </p>
      {found?.lens && (
        <p class="row">
          <button
            type="button"
            class="button button-strong"
            disabled={isKept}
            onClick={() => {
              keepLens(found.lens ?? null, boards);
              bench.announce(w.lensIsKept(boards.length));
            }}
          >
            {w.keepLens}
          </button>
          <span>{isKept ? w.lensIsKept(boards.length) : w.lensFrom(boards.length)}</span>
        </p>
      )}
    </>
  );
}

/** With a photograph of a sheet: that the kept lens is taken out, and the way to forget it. */
export function KeptLensNote({ onForget }: { readonly onForget: () => void }) {
  const w = words().forms;
  if (!keptLens.value) return null;
  return (
    <p class="row">
      <span>{w.lensKept}</span>
      <button
        type="button"
        class="button button-line"
        onClick={() => {
          keepLens(null, []);
          onForget();
        }}
      >
        {w.forgetLens}
      </button>
    </p>
  );
}
