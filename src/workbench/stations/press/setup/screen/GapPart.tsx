import { bareLength, sayFine, sayLength, sayShare } from '../../../../ui/fields/units.ts';
import { CountField } from '../../../../ui/fields/CountField.tsx';
import { LengthBox } from '../../../../ui/fields/LengthField.tsx';
import { Why } from '../../../../ui/fields/Why.tsx';
import { told, words } from '../../../../store/words.ts';
import { setScreen } from '../edits.ts';
import { RunGaps } from './RunGaps.tsx';
import { GapPicture } from './GapPicture.tsx';
import type { PartProps } from '../part.ts';

export function GapPart({ bench, plan }: PartProps) {
  const w = words().press;
  const { press } = plan;
  const job = bench.job.value!;
  const { units, screen } = job;
  const say = (mm: number): string => sayLength(mm, units);
  const bare = (mm: number): string => bareLength(mm, units);
  if (!screen)
    return (
      <div class="part-empty">
        <p>{w.noScreen}</p>
      </div>
    );
  const { risers, offContact } = press;
  const off = Math.abs(press.gapMm - press.gap.gapMm) > 0.05;
  return (
    <div class="part-two part-wide gap-part">
      <div class="part-picture">
        <GapPicture plan={plan} screen={screen} />
        <p class="field-note">{w.tenTimes}</p>
      </div>
      <div class="part-words">
        <h2>{w.gapHead(say(press.gapMm))}</h2>
        <div class="fields">
          <LengthBox
            label={w.gapOwn}
            mm={screen.offContactMm ?? null}
            units={units}
            minMm={0}
            maxMm={50}
            optional
            hint={bare(press.gap.gapMm)}
            onSet={(mm) => setScreen(bench, 'gap', { offContactMm: mm ?? undefined })}
          />
          {off && (
            <button type="button" class="button button-box" onClick={() => setScreen(bench, 'gap', { offContactMm: undefined })}>
              {w.takeAdvised(say(press.gap.gapMm))}
            </button>
          )}
          <Why of={w.gapAdvised(say(press.gap.gapMm))}>
            {told(press.gap.why)} {w.between(say(press.gap.rangeMm[0]), say(press.gap.rangeMm[1]))}.
          </Why>
          <LengthBox
            label={w.hingeLift}
            mm={screen.hingeLiftMm ?? null}
            units={units}
            minMm={0}
            maxMm={300}
            optional
            onSet={(mm) => setScreen(bench, 'lift', { hingeLiftMm: mm ?? undefined })}
          />
          <LengthBox
            label={w.board}
            mm={screen.riserStepMm ?? null}
            units={units}
            minMm={0.1}
            maxMm={50}
            optional
            onSet={(mm) => setScreen(bench, 'board', { riserStepMm: mm ?? undefined })}
          />
          <CountField
            label={`${w.tension}, N/cm`}
            value={screen.tensionNPerCm ?? 0}
            min={0}
            max={100}
            digits={1}
            onSet={(v) => setScreen(bench, 'tension', { tensionNPerCm: v > 0 ? v : undefined })}
          />
          {screen.tensionNPerCm === undefined && <p class="field-note">0: {w.unknown}</p>}
        </div>
        {risers === null ? (
          <p class="needs-line">
            <b>{w.needsLift}</b>
          </p>
        ) : (
          <dl class="facts">
            <dt>
              {w.riserFront}
              <Why of={w.riserFront}>{w.riserWhy}</Why>
            </dt>
            <dd>
              {say(risers.built.frontMm)}
              {risers.layers.map((l) => (
                <small key={l.thicknessMm}>
                  {w.riserLayers(l.count, say(l.thicknessMm), say(l.heightMm), l.cardMm > 0 ? say(l.cardMm) : null)}
                </small>
              ))}
            </dd>
            {risers.built.underPaperMm > 0.05 && (
              <>
                <dt>{w.riserUnderPaper}</dt>
                <dd>{say(risers.built.underPaperMm)}</dd>
              </>
            )}
            {risers.built.underHingeMm > 0.05 && (
              <>
                <dt>{w.riserUnderHinge}</dt>
                <dd>{say(risers.built.underHingeMm)}</dd>
              </>
            )}
          </dl>
        )}
        {offContact && (
          <dl class="facts">
            <dt>
              {w.growth}
              <Why of={w.growth}>{w.growthWhy(sayShare(offContact.mostStrain, 2))}</Why>
            </dt>
            <dd>
              {w.growthAlong(sayFine(offContact.alongMm, units))}
              <small>{w.growthAcross(sayFine(Math.max(...offContact.acrossMm), units))}</small>
            </dd>
          </dl>
        )}
        {[...(offContact?.problems ?? []), ...(risers?.problems ?? [])].map((p, at) => (
          <p key={`${at} ${p.code}`} class="says-do">
            <b>{told(p.message)}</b> {told(p.advice)}
          </p>
        ))}
      </div>
      <RunGaps bench={bench} plan={plan} />
    </div>
  );
}
