import { faultsOf } from '../../../engine/faults.ts';
import type { TraceAnswer } from '../../../engine/protocol.ts';
import type { Bench } from '../../../store/bench.ts';
import { download } from '../../../store/keep/files.ts';
import { language, words } from '../../../store/words.ts';
import { say } from '../../../../words/one-language.ts';
import type { JobCamera } from '../../../../core/job/index.ts';
import { cameraName } from '../../../ui/camera-name.ts';
import { forgetCamera, keepCamera, keptCameras } from '../../../store/keep/lens.ts';

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
  const read = found?.read;
  const boards = read?.seen.length ?? 0;
  const isKept = read !== undefined && keptCameras.value.some((one) => one.bend === read.bend && one.boards === read.boards);
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
      {read && (
        <p class="row">
          <button
            type="button"
            class="button button-strong"
            disabled={isKept}
            onClick={() => {
              keepCamera(bench, read);
              bench.announce(w.lensIsKept(boards));
            }}
          >
            {w.keepLens}
          </button>
          <span>
            {cameraName(read)}: {isKept ? w.lensIsKept(boards) : w.lensFrom(boards)}
          </span>
        </p>
      )}
    </>
  );
}

/** With a photograph of a sheet: whose lens is taken out, and the way to forget it. */
export function KeptLensNote({
  bench,
  camera,
  onForget,
}: {
  readonly bench: Bench;
  readonly camera: JobCamera;
  readonly onForget: () => void;
}) {
  const w = words().forms;
  return (
    <p class="row">
      <span>{w.lensKept(cameraName(camera))}</span>
      <button
        type="button"
        class="button button-line"
        onClick={() => {
          forgetCamera(bench, camera);
          onForget();
        }}
      >
        {w.forgetLens}
      </button>
    </p>
  );
}
