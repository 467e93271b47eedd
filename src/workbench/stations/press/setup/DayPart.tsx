import { clock, studioDefaults } from '../../../../core/edition/index.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { sayMinutes } from '../../../ui/fields/units.ts';
import { Why } from '../../../ui/fields/Why.tsx';
import { told, words } from '../../../store/words.ts';
import { DayPicture } from './DayPicture.tsx';
import { setDay } from './edits.ts';
import type { PartProps } from './part.ts';

/** The day by the hour: a picture for each day, the rates it was made from, and the list. */
export function DayPart({ bench, plan }: PartProps) {
  const w = words().press;
  const job = bench.job.value!;
  const rates = job.day;
  const { day } = plan.edition;
  const refused = plan.edition.problems.filter((p) => p.severity === 'error');
  const number = (label: string, key: keyof typeof rates, min: number, max: number, unit = '', digits = 0) => (
    <CountField
      label={label}
      value={rates[key] as number}
      min={min}
      max={max}
      unit={unit}
      digits={digits}
      onSet={(v) => setDay(bench, { [key]: digits > 0 ? v : Math.round(v) })}
    />
  );
  return (
    <div class="day-part">
      {day ? (
        <>
          <div class="day-head">
            <h2>
              {w.dayHead(day.days, sayMinutes(day.workMinutes))}
              {rates.hands > 1 && <>, {w.forHands(rates.hands)}</>}
            </h2>
            <p>
              {w.dayEnds(Math.floor(day.workEnds / 1440) + 1, clock(day.workEnds))} · {w.rackPeak(day.rackPeak, rates.rackPlaces)}
              <Why of={w.rack}>{w.rackWhy}</Why>
            </p>
          </div>
          {Array.from({ length: Math.min(day.days, 8) }, (_, i) => (
            <DayPicture
              key={i}
              plan={plan}
              day={day}
              number={i + 1}
              startHour={rates.startHour}
              endHour={rates.endHour}
              rackPlaces={rates.rackPlaces}
            />
          ))}
          <p class="field-note">
            {w.dayKey}
            {rates.hands > 1 && ` ${w.handsKey}`}
          </p>
          {day.problems.map((p) => (
            <p key={`${p.code} ${p.path}`} class="says-do">
              <b>{told(p.message)}</b> {told(p.advice)}
            </p>
          ))}
        </>
      ) : (
        <div class="part-empty">
          <p>{w.dayNone}</p>
          {refused.map((p) => (
            <p key={`${p.code} ${p.path}`}>
              <b>{told(p.message)}</b> {told(p.advice)}
            </p>
          ))}
        </div>
      )}
      <h3>{w.rates}</h3>
      <div class="fields fields-many">
        {number(w.start, 'startHour', 0, 24, w.hour, 2)}
        {number(w.end, 'endHour', 0, 24, w.hour, 2)}
        {number(w.pullsPerHour, 'pullsPerHour', 1, 1000)}
        {number(w.setUp, 'setUpMinutes', 0, 600, w.minutes)}
        {number(w.cleanUp, 'cleanMinutes', 0, 600, w.minutes)}
        {number(w.dryTime, 'dryMinutes', 0, 5000, w.minutes)}
        {number(w.rackPlaces, 'rackPlaces', 0, 5000)}
        {number(w.screens, 'screens', 1, 50)}
        {number(w.humidity, 'humidityPercent', 0, 100, w.percent)}
        {number(w.meal, 'mealHour', 0, 24, w.hour, 2)}
        {number(w.mealTakes, 'mealMinutes', 0, 300, w.minutes)}
        {number(w.runsADay, 'mostRunsPerDay', 1, 50)}
        {number(w.screenDries, 'screenDryMinutes', 0, 600, w.minutes)}
        {number(w.hands, 'hands', 1, 6)}
        {rates.hands > 1 && (
          <CountField
            label={w.helpedPace}
            value={rates.pullsPerHourHelped ?? rates.pullsPerHour * studioDefaults.helpedPace}
            min={1}
            max={1000}
            onSet={(v) => setDay(bench, { pullsPerHourHelped: Math.round(v) })}
          />
        )}
        <label class="check">
          <input
            type="checkbox"
            checked={rates.mixing === 'day-before'}
            onChange={(e) => setDay(bench, { mixing: e.currentTarget.checked ? 'day-before' : 'same-day' })}
          />
          <span>{w.mixBefore}</span>
        </label>
      </div>
      {day && (
        <>
          <p>
            {w.dryNow(sayMinutes(day.dryMinutes))}
            <Why of={w.dryTime}>{w.dryWhy(sayMinutes(rates.dryMinutes), sayMinutes(day.dryMinutes))}</Why> · {w.openTime}:{' '}
            {told(day.openTime.text)}
          </p>
          <details class="day-list">
            <summary>{w.list}</summary>
            <table>
              <thead>
                <tr>
                  <th>{w.from}</th>
                  <th>{w.to}</th>
                  {rates.hands > 1 && <th>{w.who}</th>}
                  <th>{w.what}</th>
                </tr>
              </thead>
              <tbody>
                {day.steps
                  .filter((s) => s.what !== 'rest')
                  .map((s) => (
                    <tr key={`${s.startMinutes} ${s.who}`}>
                      <td>
                        {day.days > 1 ? `${w.dayNumber(s.day)}, ` : ''}
                        {s.start}
                      </td>
                      <td>{s.end}</td>
                      {rates.hands > 1 && <td>{s.who > 0 ? w.hand(s.who) : ''}</td>}
                      <td>
                        <b>
                          {[plan.layers.find((l) => l.id === s.run)?.name, s.what === 'rack' ? w.racking : w[s.what]]
                            .filter(Boolean)
                            .join(': ')}
                        </b>{' '}
                        {told(s.text)} <small>{told(s.where)}</small>
                      </td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </details>
        </>
      )}
    </div>
  );
}
