import { knifeMinutes, knifeRates } from '../../../../core/stencil/index.ts';
import { NumberField } from '../../../ui/fields/NumberField.tsx';
import { TextField } from '../../../ui/fields/TextField.tsx';
import { bareLength, mmPerInch, sayLength, sayMinutes, sayNumber, tryReadLength, type LengthUnits } from '../../../ui/fields/units.ts';
import { download } from '../../../store/keep/files.ts';
import { faultsOf } from '../../../engine/faults.ts';
import { language, step, words } from '../../../store/words.ts';
import { withPace } from '../edits.ts';
import type { PartProps } from '../parts.ts';

/** What the knife has to do, in one word and in numbers; and the cut sheet as a file. */
export function KnifeWork({ bench, layer, planned }: PartProps) {
  const w = words().stencils;
  const job = bench.job.value!;
  const { units } = job;
  const { knife } = planned.stencil;
  const metres =
    units === 'mm' ? `${sayNumber(knife.metres, knife.metres < 10 ? 1 : 0, true)}\u00a0m` : sayLength(knife.metres * 1000, 'in', 0);
  const parts = knifeMinutes(knife, knifeRates(job.knife));
  const said = (minutes: number): string => `${sayNumber(minutes, 1, true)}\u00a0min`;
  const save = async (format: 'svg' | 'dxf'): Promise<void> => {
    bench.refuse(null);
    try {
      await bench.upToDate();
      const file = await bench.ask('cutFile', { layerId: layer.id, format, language: language.value });
      download(file.bytes, file.path, format === 'svg' ? 'image/svg+xml' : 'application/dxf');
      bench.announce(w.saved(file.path));
    } catch (error) {
      bench.refuse(faultsOf(error));
    }
  };
  return (
    <section class="beside" aria-labelledby="knife">
      <h2 id="knife">{w.knife}</h2>
      <p class="outcome">
        {w.difficulty[knife.difficulty]}, {sayMinutes(Math.max(1, knife.minutes))}
      </p>
      <p>
        {w.metres(metres)} · {w.corners(knife.corners)} · {w.pieces(knife.pieces)}
      </p>
      <details class="fold">
        <summary>{words().sheet.why}</summary>
        <p>
          {w.knifeParts(
            metres,
            said(parts.lines),
            w.corners(knife.corners),
            said(parts.corners),
            w.pieces(knife.pieces),
            said(parts.pieces),
          )}{' '}
          {job.knife ? w.paceOwn : w.paceUsual} {w.knifeWhy}
        </p>
      </details>
      <Pace bench={bench} />
      <div class="row">
        <span>{w.file}</span>
        <button type="button" class="button button-line" onClick={() => void save('svg')}>
          {w.svg}
        </button>
        <button type="button" class="button button-line" onClick={() => void save('dxf')}>
          {w.dxf}
        </button>
      </div>
      <p class="num-note">{w.fileNote}</p>
    </section>
  );
}

/** Diameters behind one another, `3; 5; 8`, smallest first; what is none is left out. */
function punchesIn(text: string, units: LengthUnits): number[] | undefined {
  const read = text
    .split(/;|,\s/)
    .flatMap((one) => {
      const length = one.trim() === '' ? null : tryReadLength(one, units);
      return length?.ok && length.value > 0 && length.value <= 500 ? [length.value] : [];
    })
    .sort((a, b) => a - b);
  return read.length > 0 ? read.slice(0, 50) : undefined;
}

/** How fast this studio cuts: every stencil's minutes follow from it. */
function Pace({ bench }: Pick<PartProps, 'bench'>) {
  const w = words().stencils;
  const { knife, units } = bench.job.value!;
  const rates = knifeRates(knife);
  const set = (change: Parameters<typeof withPace>[1]): void => bench.edit(step('pace'), (job) => withPace(job, change));
  // Along a line by the metre or by the inch, as the job is measured.
  const perMetre = units === 'mm' ? 1 : 1000 / mmPerInch;
  const least = units === 'mm' ? 0.01 : 0.4,
    most = units === 'mm' ? 50 : 1968;
  return (
    <details class="fold">
      <summary>{w.pace}</summary>
      <div class="nums">
        <label class="num">
          <span>{w.alongLines}</span>
          <NumberField
            label={w.alongLines}
            value={rates.metresPerMinute * perMetre}
            min={least}
            max={most}
            digits={units === 'mm' ? 2 : 1}
            unit={units === 'mm' ? 'm' : 'in'}
            onSet={(v) => set({ metresPerMinute: v / perMetre })}
          />
        </label>
        <label class="num">
          <span>{w.aCorner}</span>
          <NumberField
            label={w.aCorner}
            value={rates.secondsPerCorner}
            min={0}
            max={300}
            digits={1}
            unit="s"
            onSet={(secondsPerCorner) => set({ secondsPerCorner })}
          />
        </label>
        <label class="num">
          <span>{w.aPiece}</span>
          <NumberField
            label={w.aPiece}
            value={rates.secondsPerPiece}
            min={0}
            max={300}
            digits={1}
            unit="s"
            onSet={(secondsPerPiece) => set({ secondsPerPiece })}
          />
        </label>
      </div>
      <TextField
        label={w.punches}
        value={(knife?.punchesMm ?? []).map((mm) => bareLength(mm, units)).join('; ')}
        most={200}
        onSet={(text) => set({ punchesMm: punchesIn(text, units) })}
      />
      <p class="num-note">{w.paceNote}</p>
      {knife && (
        <button type="button" class="button button-line" onClick={() => set(null)}>
          {w.paceBack}
        </button>
      )}
    </details>
  );
}
