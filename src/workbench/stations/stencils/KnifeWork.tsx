import { problem, ProblemError } from '../../../core/problem.ts';
import { sayLength, sayNumber } from '../../ui/units.ts';
import { download } from '../../store/files.ts';
import { words } from '../../words/index.ts';
import type { PartProps } from './parts.ts';

/** What the knife has to do, in one word and in numbers; and the cut sheet as a file. */
export function KnifeWork({ bench, layer, planned }: PartProps) {
  const w = words().stencils;
  const { units } = bench.job.value!;
  const { knife } = planned.stencil;
  const metres = units === 'mm' ? `${sayNumber(knife.metres, knife.metres < 10 ? 1 : 0, true)}\u00a0m` : sayLength(knife.metres * 1000, 'in', 0);
  const save = async (format: 'svg' | 'dxf'): Promise<void> => {
    bench.refuse(null);
    try {
      await bench.upToDate();
      const file = await bench.ask('cutFile', { layerId: layer.id, format });
      download(file.bytes, file.path, format === 'svg' ? 'image/svg+xml' : 'application/dxf');
      bench.announce(w.saved(file.path));
    } catch (error) {
      bench.refuse(error instanceof ProblemError ? error.problems : [problem('error', 'went-wrong', layer.name, words().shell.wentWrong, error instanceof Error ? error.message : String(error))]);
    }
  };
  return (
    <section class="beside" aria-labelledby="knife">
      <h2 id="knife">{w.knife}</h2>
      <p class="outcome">{w.difficulty[knife.difficulty]}, {w.minutes(knife.minutes)}</p>
      <p>{w.metres(metres)} · {w.corners(knife.corners)} · {w.pieces(knife.pieces)}</p>
      <details class="fold"><summary>{words().sheet.why}</summary><p>{w.knifeWhy(metres)}</p></details>
      <div class="row">
        <span>{w.file}</span>
        <button type="button" class="button button-line" onClick={() => void save('svg')}>{w.svg}</button>
        <button type="button" class="button button-line" onClick={() => void save('dxf')}>{w.dxf}</button>
      </div>
      <p class="num-note">{w.fileNote}</p>
    </section>
  );
}
