import type { JobPaper } from '../../../../core/job/index.ts';
import { sayLength } from '../../../ui/fields/units.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { LengthBox } from '../../../ui/fields/LengthField.tsx';
import { ProofCanvas } from '../../../ui/proof/ProofCanvas.tsx';
import { TextField } from '../../../ui/fields/TextField.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { told, words } from '../../../store/words.ts';
import { asJob } from '../../inks/edits.ts';
import { OneReading } from '../../inks/read/OneReading.tsx';
import { addPaperLike, setPaper, takePaperAway } from './edits.ts';
import type { PartProps } from './part.ts';

/** Every paper as a card, all at one scale: sheet, grain, the print on it, the stops it is pushed against. */
export function PapersPart(props: PartProps) {
  const { papers } = props.bench.job.value!;
  const tallest = Math.max(1, ...papers.map((p) => p.heightMm)),
    widest = Math.max(1, ...papers.map((p) => p.widthMm));
  return (
    <div class="papers">
      {papers.map((paper) => (
        <PaperCard key={paper.id} {...props} paper={paper} ofMm={[widest, tallest]} alone={papers.length === 1} />
      ))}
    </div>
  );
}

function PaperCard({
  bench,
  plan,
  paper,
  ofMm,
  alone,
}: PartProps & { readonly paper: JobPaper; readonly ofMm: readonly [number, number]; readonly alone: boolean }) {
  const w = words().press;
  const { units } = plan.job;
  const shown = plan.papers.find((p) => p.id === paper.id);
  const template = plan.register.stops.find((s) => s.paperId === paper.id)?.template;
  const say = (mm: number): string => sayLength(mm, units);
  const set = (change: Partial<JobPaper>): void => setPaper(bench, paper.id, change);
  const room = 14;
  const whole = [ofMm[0] + 2 * room, ofMm[1] + 2 * room] as const;
  const left = (whole[0] - paper.widthMm) / 2,
    top = whole[1] - room - paper.heightMm;
  const share = (mm: number, of: 0 | 1): string => `${(100 * mm) / whole[of]}%`;
  const lines = Array.from({ length: 9 }, (_, i) => (i + 1) / 10);
  return (
    <section class="paper-card" aria-label={paper.name} data-paper={paper.id}>
      <div class="paper-picture" style={{ '--ratio': String(whole[0] / whole[1]) }} role="img" aria-label={w.paperCard(paper.name)}>
        <svg viewBox={`${-left} ${-top} ${whole[0]} ${whole[1]}`} aria-hidden="true">
          <rect width={paper.widthMm} height={paper.heightMm} fill={shown?.swatch.srgb ?? '#e9e9e9'} />
          {paper.grain !== 'unknown' &&
            lines.map((at) =>
              paper.grain === 'along-width' ? (
                <line key={at} class="grain" x1={0} x2={paper.widthMm} y1={paper.heightMm * at} y2={paper.heightMm * at} />
              ) : (
                <line key={at} class="grain" y1={0} y2={paper.heightMm} x1={paper.widthMm * at} x2={paper.widthMm * at} />
              ),
            )}
          {template?.stops.map((stop) => (
            <rect key={stop.number} class="stop" x={stop.xMm} y={stop.yMm} width={stop.widthMm} height={stop.heightMm} />
          ))}
        </svg>
        {shown && template && (
          <div
            class="fit-image"
            aria-hidden="true"
            style={{
              left: share(left + template.image.xMm, 0),
              top: share(top + template.image.yMm, 1),
              width: share(template.image.widthMm, 0),
              height: share(template.image.heightMm, 1),
            }}
          >
            <ProofCanvas bench={bench} plan={plan} paper={shown} label="" />
          </div>
        )}
      </div>
      <h2>
        {paper.name}
        {paper.printed && <small>{w.printedAlready}</small>}
      </h2>
      <TextField
        label={w.paperName}
        value={paper.name}
        most={200}
        onSet={(name) => {
          if (name) set({ name });
        }}
      />
      <OneReading bench={bench} label={w.paperColour} reading={paper.reading} onSet={(reading) => set({ reading: asJob(reading) })} />
      <div class="fields">
        <CountField label={w.sheetCount} value={paper.count} min={0} max={10000} onSet={(v) => set({ count: Math.round(v) })} />
        <LengthBox label={w.sheetWidth} mm={paper.widthMm} units={units} minMm={10} maxMm={5000} onSet={(mm) => set({ widthMm: mm! })} />
        <LengthBox label={w.sheetHeight} mm={paper.heightMm} units={units} minMm={10} maxMm={5000} onSet={(mm) => set({ heightMm: mm! })} />
        <LengthBox
          label={w.sheetThick}
          mm={paper.thicknessMm}
          units={units}
          minMm={0.01}
          maxMm={10}
          onSet={(mm) => set({ thicknessMm: mm! })}
        />
        <label class="length-field">
          <span class="length-label">{w.grain}</span>
          <select
            class="choice"
            value={paper.grain}
            onChange={(e) =>
              set({ grain: (['along-width', 'along-height', 'unknown'] as const).find((g) => g === e.currentTarget.value) ?? 'unknown' })
            }
          >
            <option value="along-width">{w.grainWidth}</option>
            <option value="along-height">{w.grainHeight}</option>
            <option value="unknown">{w.grainUnknown}</option>
          </select>
        </label>
        <label class="length-field">
          <span class="length-label">{w.edge}</span>
          <select class="choice" value={paper.edge} onChange={(e) => set({ edge: e.currentTarget.value === 'torn' ? 'torn' : 'cut' })}>
            <option value="cut">{w.edgeCut}</option>
            <option value="torn">{w.edgeTorn}</option>
          </select>
        </label>
        <label class="length-field">
          <span class="length-label">{w.absorbs}</span>
          <select
            class="choice"
            value={paper.absorbency}
            onChange={(e) => set({ absorbency: (['low', 'usual', 'high'] as const).find((a) => a === e.currentTarget.value) ?? 'usual' })}
          >
            <option value="low">{w.absorbsLow}</option>
            <option value="usual">{w.absorbsUsual}</option>
            <option value="high">{w.absorbsHigh}</option>
          </select>
        </label>
        <label class="check">
          <input type="checkbox" checked={paper.cockles} onChange={(e) => set({ cockles: e.currentTarget.checked })} />
          <span>{w.cockles}</span>
        </label>
      </div>
      {template && (
        <p>
          {w.stopsThick(say(template.thicknessMm[0]), say(template.thicknessMm[1]))}
          <Why of={w.stops}>{w.stopsWhy}</Why>
        </p>
      )}
      {template?.problems.map((p) => (
        <p key={`${p.code} ${p.path}`} class="field-note">
          <b>{told(p.message)}</b> {told(p.advice)}
        </p>
      ))}
      <div class="row">
        <button type="button" class="button button-box" onClick={() => addPaperLike(bench, paper.id, w.copyOf(paper.name))}>
          {w.anotherPaper}
        </button>
        {!alone && (
          <button type="button" class="button button-box" onClick={() => takePaperAway(bench, paper.id)}>
            {w.takePaperAway}
          </button>
        )}
      </div>
    </section>
  );
}
