import { registerMethods, type RegisterMethod } from '../../../../../core/press/index.ts';
import { bareLength, sayLength } from '../../../../ui/fields/units.ts';
import { CountField } from '../../../../ui/fields/CountField.tsx';
import { LengthBox } from '../../../../ui/fields/LengthField.tsx';
import { Why } from '../../../../ui/fields/Why.tsx';
import { told, words } from '../../../../store/words.ts';
import { setRegister } from '../edits.ts';
import { PairBars } from './PairBars.tsx';
import type { PartProps } from '../part.ts';
import { TestSheets } from './TestSheets.tsx';
import { SheetProof } from './SheetProof.tsx';

export function RegisterPart({ bench, plan }: PartProps) {
  const w = words().press;
  const { register } = plan;
  const job = bench.job.value!;
  const { units } = job;
  const names: Record<RegisterMethod, string> = { stops: w.stops, pins: w.pins, 'hinged-sheet': w.hinged, 'by-eye': w.byEye };
  const torn = job.papers.some((p) => p.edge === 'torn');
  const range = (method: RegisterMethod): readonly [number, number] =>
    registerMethods.find((m) => m.method === method && (m.edge === 'any' || m.edge === (torn ? 'torn' : 'cut')))!.toleranceMm;
  const bare = (mm: number): string => bareLength(mm, units);
  const [low, high] = job.register.humidityPercent ?? [50, 50];
  const humidity = (from: number, to: number): void =>
    setRegister(bench, 'humidity', { humidityPercent: [Math.min(from, to), Math.max(from, to)] });
  return (
    <div class="part-two">
      <SheetProof bench={bench} plan={plan} />
      <div class="part-words">
        <fieldset class="methods">
          <legend>{w.method}</legend>
          {(['pins', 'hinged-sheet', 'stops', 'by-eye'] as const).map((method) => (
            <label key={method} class="method">
              <input
                type="radio"
                name="method"
                checked={job.register.method === method}
                onChange={() => setRegister(bench, 'method', { method })}
              />
              <span class="method-name">
                {names[method]}
                <small>{w.methodRange(bare(range(method)[0]), sayLength(range(method)[1], units))}</small>
              </span>
              {/* Drawn as large as it is on paper: twice the tolerance, at 96 px an inch. */}
              <span
                class="method-mark"
                aria-hidden="true"
                style={{ width: `${range(method)[1] * 2}mm`, height: `${range(method)[1] * 2}mm` }}
              />
            </label>
          ))}
        </fieldset>
        <div class="fields">
          <LengthBox
            label={w.sigmaOwn}
            mm={job.register.measured ? register.sigma.sigmaMm : (job.register.sigmaMm ?? null)}
            units={units}
            minMm={0}
            maxMm={20}
            optional
            onSet={(mm) => setRegister(bench, 'sigma', { sigmaMm: mm ?? undefined, measured: undefined })}
          />
          <button
            type="button"
            class="button button-box"
            onClick={() => document.querySelector('.test-sheets')?.scrollIntoView({ block: 'start' })}
          >
            {w.testHead}
          </button>
          <CountField label={w.humidityFrom} value={low} min={0} max={100} unit="%" onSet={(v) => humidity(v, high)} />
          <CountField label={w.humidityTo} value={high} min={0} max={100} unit="%" onSet={(v) => humidity(low, v)} />
        </div>
        <div class="within">
          <h2>{w.withinMm(sayLength(register.sigma.toleranceMm, units))}</h2>
          <Why of={w.withinMm('')}>{w.withinWhy(told(register.sigma.text))}</Why>
        </div>
        {register.budget && <PairBars bench={bench} plan={plan} budget={register.budget} />}
      </div>
      <TestSheets bench={bench} plan={plan} />
    </div>
  );
}
