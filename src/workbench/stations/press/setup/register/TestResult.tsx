import { registerTestSheet, shiftOfLine, type RegisterFound } from '../../../../../core/press/index.ts';
import { sayLength, sayNumber } from '../../../../ui/fields/units.ts';
import { Why } from '../../../../ui/fields/Why.tsx';
import { told, words } from '../../../../store/words.ts';
import type { ShownPlan } from '../../../../engine/protocol.ts';
import type { TestSheetsOfJob } from './test-edits.ts';

interface Props {
  readonly plan: ShownPlan;
  readonly sheets: TestSheetsOfJob;
  readonly onUse: () => void;
  readonly onBack: () => void;
  /** The job is planned with measured figures now. */
  readonly own: boolean;
}

/** What the sheets tell so far: where each fell, σ for both ways, turn, drift, and how sure. */
export function TestResult({ plan, sheets, onUse, onBack, own }: Props) {
  const w = words().press;
  const { units } = plan.job;
  const tested = plan.register.tested;
  const found = tested?.found ?? null;
  const say = (mm: number): string => sayLength(mm, units, units === 'mm' ? 2 : 3);
  const degrees = (deg: number): string => `${sayNumber(deg, 3, true)}°`;
  return (
    <div class="test-result">
      <Target sheets={sheets} found={found} label={w.testTarget} />
      {found ? (
        <dl class="facts" aria-live="polite">
          <dt>
            {w.testSpread}
            <Why of={w.testSpread}>{w.testSpreadWhy(found.sheets)}</Why>
          </dt>
          <dd>
            {say(found.sigmaMm.both)}
            <small>{w.testSure(say(found.sigmaRangeMm[0]), say(found.sigmaRangeMm[1]))}</small>
            <small>{w.testAxes(say(found.sigmaMm.x), say(found.sigmaMm.y))}</small>
          </dd>
          <dt>{w.testTurn}</dt>
          <dd>{found.turnDeg ? degrees(found.turnDeg.sigma) : w.unknown}</dd>
          <dt>{w.testDrift}</dt>
          <dd>
            {say(Math.abs(found.driftMm[0]))} {found.driftMm[0] < 0 ? w.testLeft : w.testRight}
            <small>
              {say(Math.abs(found.driftMm[1]))} {found.driftMm[1] < 0 ? w.testUp : w.testDown}
              {found.turnDeg && `, ${degrees(Math.abs(found.turnDeg.mean))} ${found.turnDeg.mean < 0 ? w.testAnti : w.testClock}`}
            </small>
          </dd>
        </dl>
      ) : (
        <p class="needs-line">
          <b>{w.testFew}</b>
        </p>
      )}
      {tested?.advice.map((one) => (
        <p key={one.key} class="says-do">
          {told(one)}
        </p>
      ))}
      {(tested?.problems ?? [])
        .filter((p) => found !== null || p.code !== 'test-sheets-few')
        .map((p, at) => (
          <p key={`${at} ${p.code}`} class="field-note">
            {told(p.message)} {told(p.advice)}
          </p>
        ))}
      <div class="pair-do">
        {found && !tested?.taken && (
          <button type="button" class="button button-box button-strong" onClick={onUse}>
            {w.testUse}
          </button>
        )}
        {tested?.taken && <b>{w.testTaken}</b>}
        {own && (
          <button type="button" class="button button-box" onClick={onBack}>
            {w.testBack}
          </button>
        )}
      </div>
    </div>
  );
}

/** Where the second run fell against the first, a cross a sheet, with the spread as a ring. */
function Target({
  sheets,
  found,
  label,
}: {
  readonly sheets: TestSheetsOfJob;
  readonly found: RegisterFound | null;
  readonly label: string;
}) {
  const { rangeMm } = registerTestSheet(sheets.imageMm, { readsMm: sheets.readsMm });
  const numbers = [...new Set(sheets.readings.map((one) => one.sheet))];
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const points = numbers.flatMap((sheet) => {
    const read = sheets.readings.filter((one) => one.sheet === sheet && one.across !== undefined && one.down !== undefined);
    return read.length === 0
      ? []
      : [
          {
            sheet,
            x: mean(read.map((one) => shiftOfLine(one.across!, sheets.readsMm))),
            y: mean(read.map((one) => shiftOfLine(one.down!, sheets.readsMm))),
          },
        ];
  });
  const reach = Math.max(rangeMm, ...points.flatMap((p) => [Math.abs(p.x), Math.abs(p.y)])) * 1.1;
  const arm = reach * 0.04;
  const steps = Array.from({ length: Math.floor(reach / 0.5) }, (_, i) => (i + 1) * 0.5);
  return (
    <svg class="test-target" viewBox={`${-reach} ${-reach} ${2 * reach} ${2 * reach}`} role="img" aria-label={label}>
      {steps.map((r) => (
        <circle key={r} class="target-ring" r={r} />
      ))}
      <path class="target-axes" d={`M${-reach} 0H${reach}M0 ${-reach}V${reach}`} />
      {found && (
        <ellipse
          class="target-spread"
          cx={found.driftMm[0]}
          cy={found.driftMm[1]}
          rx={2 * Math.SQRT2 * found.sigmaMm.x}
          ry={2 * Math.SQRT2 * found.sigmaMm.y}
        />
      )}
      {points.map((p) => (
        <path key={p.sheet} class="target-sheet" d={`M${p.x - arm} ${p.y}h${2 * arm}M${p.x} ${p.y - arm}v${2 * arm}`} />
      ))}
    </svg>
  );
}
