import type { JobScreen } from '../../../../../core/job/index.ts';
import { bareLength, sayLength } from '../../../../ui/fields/units.ts';
import { LengthBox } from '../../../../ui/fields/LengthField.tsx';
import { Why } from '../../../../ui/fields/Why.tsx';
import { told, words } from '../../../../store/words.ts';
import { setScreen, takeScreen } from '../edits.ts';
import { FitPicture } from '../register/FitPicture.tsx';
import { MeshChoice } from './MeshChoice.tsx';
import type { PartProps } from '../part.ts';

const sides = ['top', 'bottom', 'left', 'right'] as const;
/** What a supplier's note asks for around an image (see core/press), rounded up: room for both wells and both blade ends. */
const usualRoomMm = [130, 205] as const;

export function ScreenPart({ bench, plan }: PartProps) {
  const w = words().press;
  const job = bench.job.value!;
  const { press } = plan;
  const { units, screen } = job;
  const { fit } = press;
  if (!screen) {
    const up = (mm: number): number => Math.ceil(mm / 10) * 10;
    const { mesh } = press.deposit;
    const fresh: JobScreen = {
      insideWidthMm: up(job.image.widthMm + usualRoomMm[0]),
      insideHeightMm: up(job.image.heightMm + usualRoomMm[1]),
      mesh: { perCm: mesh.perCm, threadMicrons: mesh.threadMicrons },
      hinge: 'top',
    };
    return (
      <div class="part-empty">
        <p>{w.noScreen}</p>
        <button type="button" class="button button-strong" onClick={() => takeScreen(bench, fresh)}>
          {w.takeScreen}
        </button>
      </div>
    );
  }
  return (
    <div class="part-two">
      <div class="part-picture">{fit && <FitPicture bench={bench} plan={plan} fit={fit} screen={screen} />}</div>
      <div class="part-words">
        {fit && (
          <div class="verdict">
            <h2>{{ holds: w.fitHolds, tight: w.fitTight, no: w.fitNo }[fit.verdict]}</h2>
            <Why of={w.screen}>
              {w.fitWhy(
                sayLength(fit.margins.find((m) => m.role === 'ink well')?.wantedMm ?? 0, units),
                sayLength(fit.margins.find((m) => m.role === 'blade end')?.wantedMm ?? 0, units),
              )}
            </Why>
            {fit.problems.length > 0 && (
              <ul class="says">
                {fit.problems.map((p, at) => (
                  <li key={`${at} ${p.code}`}>{told(p.message)}</li>
                ))}
              </ul>
            )}
            {fit.remedies.length > 0 && (
              <ul class="says says-do">
                {fit.remedies.map((r) => (
                  <li key={r.what}>{told(r.text)}</li>
                ))}
              </ul>
            )}
          </div>
        )}
        {press.problems
          .filter((p) => p.severity === 'error' && !fit)
          .map((p, at) => (
            <p key={`${at} ${p.code}`}>
              <b>{told(p.message)}</b> {told(p.advice)}
            </p>
          ))}
        <div class="fields">
          <LengthBox
            label={w.frameWidth}
            mm={screen.insideWidthMm}
            units={units}
            minMm={20}
            maxMm={5000}
            onSet={(mm) => setScreen(bench, 'frame', { insideWidthMm: mm! })}
          />
          <LengthBox
            label={w.frameHeight}
            mm={screen.insideHeightMm}
            units={units}
            minMm={20}
            maxMm={5000}
            onSet={(mm) => setScreen(bench, 'frame', { insideHeightMm: mm! })}
          />
          <LengthBox
            label={w.squeegee}
            mm={screen.squeegeeMm ?? null}
            units={units}
            minMm={20}
            maxMm={5000}
            optional
            onSet={(mm) => setScreen(bench, 'squeegee', { squeegeeMm: mm ?? undefined })}
            hint={fit ? bareLength(fit.squeegee.bestMm, units) : undefined}
          />
          {fit && (
            <p class="field-note">{w.squeegeeFrom(bareLength(fit.squeegee.leastMm, units), sayLength(fit.squeegee.mostMm, units))}</p>
          )}
          <LengthBox
            label={w.tapeWidth}
            mm={screen.tapeWidthMm ?? null}
            units={units}
            minMm={10}
            maxMm={200}
            optional
            onSet={(mm) => setScreen(bench, 'tape', { tapeWidthMm: mm ?? undefined })}
            hint={press.taping ? bareLength(press.taping.tapeWidthMm, units) : undefined}
          />
          <label class="length-field">
            <span class="length-label">{w.hinge}</span>
            <select
              class="choice"
              value={screen.hinge}
              onChange={(e) => setScreen(bench, 'hinge', { hinge: sides.find((s) => s === e.currentTarget.value) ?? 'top' })}
            >
              {sides.map((side) => (
                <option key={side} value={side}>
                  {w[side]}
                </option>
              ))}
            </select>
          </label>
        </div>
      </div>
      <MeshChoice bench={bench} plan={plan} screen={screen} />
    </div>
  );
}
