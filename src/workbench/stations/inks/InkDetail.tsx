import type { JobInk } from '../../../core/job/index.ts';
import type { InkSheet } from '../../../core/asks/index.ts';
import { CountField } from '../../ui/fields/CountField.tsx';
import { sayDelta, sayLab } from '../../ui/fields/format.ts';
import { TextField } from '../../ui/fields/TextField.tsx';
import { Why } from '../../ui/fields/Why.tsx';
import { told, words } from '../../store/words.ts';
import { Curves } from './read/Curves.tsx';
import { setInk, takeInkAway, usersOf } from './edits.ts';
import { showReading, type InkPartProps } from './state.ts';
import { slotsOf } from './shelf/slots.ts';

interface Props extends InkPartProps {
  readonly ink: JobInk;
  readonly sheet: InkSheet | undefined;
  readonly onRead: () => void;
}

/** One ink laid open: its strengths on the paper, how far to trust it, curves, readings, figures. */
export function InkDetail({ bench, job, paper, ink, sheet, onRead }: Props) {
  const w = words().inks;
  const users = usersOf(job, ink.id);
  const slots = slotsOf(ink);
  const set = (change: Partial<JobInk>): void => setInk(bench, { ...ink, ...change } as JobInk);
  return (
    <>
      <h2>{ink.name}</h2>
      {sheet && (
        <div class="strengths" role="img" aria-label={w.alone(ink.name, paper.name)} style={{ background: paper.swatch.srgb }}>
          {sheet.curves.strengths.map((s) => (
            <span key={s.share} style={{ background: s.srgb }} />
          ))}
        </div>
      )}
      {sheet && (
        <div class="strength-names" aria-hidden="true">
          {sheet.curves.strengths.map((s) => (
            <small key={s.share}>{w.share(Math.round(1 / s.share))}</small>
          ))}
        </div>
      )}
      <p class="trust">
        <b>
          {w.madeFrom[ink.from]}
          {sheet?.level ? `: ${w.levels[sheet.level]}` : ''}
        </b>
        {ink.from !== 'mix' && ink.from !== 'clear' && sheet && <span> · {w.doubt(sayDelta(sheet.sigma))}</span>}
        <Why of={w.trustHead}>{w.trustWhy}</Why>
      </p>
      {sheet?.trust && <p>{told(sheet.trust)}</p>}
      {sheet && ink.from !== 'clear' && <Curves name={ink.name} sheet={sheet} />}
      {ink.from === 'mix' ? (
        <MixBar job={job} ink={ink} swatchOf={(id) => bench.plan.value?.inks.find((k) => k.id === id)?.swatch.srgb ?? '#fff'} />
      ) : (
        slots.length > 0 && (
          <ul class="readings">
            {slots.map((slot) => {
              const shown = slot.reading && showReading(slot.reading);
              return (
                <li key={slot.key}>
                  <span class="swatch" style={{ background: shown?.srgb }} />
                  <b>{slot.label}</b>
                  <span>{shown && sayLab(shown.lab)}</span>
                </li>
              );
            })}
          </ul>
        )
      )}
      <div class="fields">
        <TextField
          label={w.name}
          value={ink.name}
          most={200}
          onSet={(name) => {
            if (name) set({ name });
          }}
        />
        <CountField
          label={w.density}
          value={ink.densityGPerMl}
          min={0.7}
          max={3}
          digits={2}
          unit={w.gPerMl}
          onSet={(densityGPerMl) => set({ densityGPerMl })}
        />
        {ink.role === 'ink' && (
          <CountField
            label={w.left}
            value={ink.leftGrams ?? 0}
            min={0}
            max={100000}
            digits={0}
            unit="g"
            onSet={(leftGrams) => set({ leftGrams: leftGrams > 0 ? leftGrams : undefined })}
          />
        )}
        {ink.from !== 'mix' && ink.from !== 'clear' && (
          <CountField
            label={w.film}
            value={ink.drawdownMicrons ?? bench.plan.value?.press.deposit.wetMicrons ?? 24}
            min={1}
            max={1000}
            digits={0}
            unit={w.microns}
            onSet={(drawdownMicrons) => set({ drawdownMicrons })}
          />
        )}
        <label class="length-field">
          <span class="length-label">{w.role}</span>
          <select
            class="choice"
            value={ink.role}
            onChange={(e) =>
              set({
                role: (['ink', 'transparent-base', 'extender-base', 'retarder'] as const).find((r) => r === e.currentTarget.value) ?? 'ink',
              })
            }
          >
            {(['ink', 'transparent-base', 'extender-base', 'retarder'] as const).map((r) => (
              <option key={r} value={r}>
                {w.roles[r]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <div class="row">
        <button type="button" class="button button-strong" onClick={onRead}>
          {w.readAgain}
        </button>
        <button type="button" class="button button-box" disabled={users.length > 0} onClick={() => takeInkAway(bench, ink)}>
          {w.takeAway}
        </button>
        {users.length > 0 && <span>{w.stillUsed(users)}</span>}
      </div>
    </>
  );
}

/** What a mix is made of, as a bar with its parts in their own colours. */
function MixBar({
  job,
  ink,
  swatchOf,
}: {
  readonly job: InkPartProps['job'];
  readonly ink: JobInk & { from: 'mix' };
  readonly swatchOf: (id: string) => string;
}) {
  const whole = ink.parts.reduce((sum, p) => sum + p.parts, 0);
  return (
    <div class="mix-bar">
      {ink.parts.map((p) => (
        <span key={p.ink} style={{ flexGrow: p.parts }}>
          <i style={{ background: swatchOf(p.ink) }} />
          <b>
            {Math.round((1000 * p.parts) / whole) / 10}
            {'\u00a0'}%
          </b>
          <small>{job.inks.find((k) => k.id === p.ink)?.name ?? p.ink}</small>
        </span>
      ))}
    </div>
  );
}
