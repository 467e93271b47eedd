import { clock, type DayPlan } from '../../../../core/edition/index.ts';
import type { ShownPlan } from '../../../engine/protocol.ts';
import { told, words } from '../../../store/words.ts';

interface Props {
  readonly plan: ShownPlan;
  readonly day: DayPlan;
  /** From 1. */
  readonly number: number;
  readonly startHour: number;
  readonly endHour: number;
  readonly rackPlaces: number;
}

/** One day: a row for each run that is at work, the first at the bottom as in the laydown, and the rack filling below. */
export function DayPicture({ plan, day, number, startHour, endHour, rackPlaces }: Props) {
  const w = words().press;
  const base = (number - 1) * 1440;
  const from = base + startHour * 60;
  const steps = day.steps.filter((s) => s.what !== 'rest' && s.startMinutes < base + 1440 && s.endMinutes > base);
  const until = Math.max(base + endHour * 60, ...steps.map((s) => Math.min(s.endMinutes, base + 1440)));
  const left = (at: number): string => `${(100 * (Math.max(from, Math.min(until, at)) - from)) / (until - from)}%`;
  const width = (a: number, b: number): string => `${(100 * (Math.min(until, b) - Math.max(from, a))) / (until - from)}%`;
  const hours = Array.from({ length: 25 }, (_, h) => base + h * 60).filter((m) => m >= from && m <= until);
  const dryOf = (run: string): readonly [number, number] | null => {
    const times = day.sheetTimes.filter((t) => t.run === run && t.off > base && t.off <= base + 1440);
    return times.length === 0 ? null : [Math.min(...times.map((t) => t.off)), Math.max(...times.map((t) => t.dry))];
  };
  // With several at work each hand has its lane; hands that find nothing to do have none.
  const hands = Math.max(1, ...day.steps.map((s) => s.who));
  const cutting = steps.filter((s) => s.what === 'cut');
  const rows = plan.layers.filter((l) => steps.some((s) => s.run === l.id)).toReversed();
  return (
    <section class="day-picture" aria-label={w.dayPicture(number)}>
      <h3>{w.dayNumber(number)}</h3>
      <div class="day-hours" aria-hidden="true">
        {hours.map((m) => (
          <span key={m} style={{ left: left(m) }}>
            {(m - base) / 60}
          </span>
        ))}
      </div>
      {cutting.length > 0 && (
        <div class="day-row">
          <span class="day-run">{w.cut}</span>
          <div class="day-track" style={{ '--hands': String(hands) }}>
            {cutting.map((s) => (
              <span
                key={`${s.startMinutes} ${s.who}`}
                class="day-step day-mix"
                title={`${s.start}–${s.end} ${told(s.text)}`}
                style={{ '--lane': String(s.who - 1), left: left(s.startMinutes), width: width(s.startMinutes, s.endMinutes) }}
              />
            ))}
          </div>
        </div>
      )}
      {rows.map((layer) => {
        const dry = dryOf(layer.id);
        return (
          <div key={layer.id} class="day-row">
            <span class="day-run">
              <b>{layer.run}</b> {layer.name}
            </span>
            <div class="day-track" style={{ '--hands': String(hands) }}>
              {hours.map((m) => (
                <span key={m} class="day-line" style={{ left: left(m) }} />
              ))}
              {dry && <span class="day-step day-drying" title={w.dry} style={{ left: left(dry[0]), width: width(dry[0], dry[1]) }} />}
              {steps
                .filter((s) => s.run === layer.id)
                .map((s) => (
                  <span
                    key={`${s.startMinutes} ${s.who}`}
                    class={`day-step day-${s.what === 'rack' ? 'racking' : s.what}`}
                    title={`${s.start}–${s.end} ${told(s.text)}`}
                    style={{
                      '--lane': String(s.who - 1),
                      left: left(s.startMinutes),
                      width: width(s.startMinutes, s.endMinutes),
                      ...(s.what === 'pull'
                        ? { background: layer.swatch?.srgb ?? '#d9d9d9', color: (layer.swatch?.lab[0] ?? 90) < 49.5 ? '#fff' : '#000' }
                        : {}),
                    }}
                  >
                    <span>{s.what === 'rack' ? w.racking : w[s.what]}</span>
                    <span class="unseen">
                      {clock(s.startMinutes)} {clock(s.endMinutes)}
                    </span>
                  </span>
                ))}
            </div>
          </div>
        );
      })}
      <Rack day={day} from={from} until={until} places={rackPlaces} />
    </section>
  );
}

/** Sheets on the rack: a step up as each comes off the press, a step down as it is dry. */
function Rack({
  day,
  from,
  until,
  places,
}: {
  readonly day: DayPlan;
  readonly from: number;
  readonly until: number;
  readonly places: number;
}) {
  const w = words().press;
  const changes = day.sheetTimes
    .flatMap(
      (t) =>
        [
          [t.off, 1],
          [t.dry, -1],
        ] as const,
    )
    .sort((a, b) => a[0] - b[0]);
  let wet = 0;
  let d = 'M0 0';
  for (const [at, by] of changes) {
    const x = Math.max(0, Math.min(until, at) - from);
    d += `H${x.toFixed(1)}`;
    wet += by;
    d += `V${wet}`;
  }
  const high = Math.max(1, places, day.rackPeak);
  return (
    <div class="day-row day-rack">
      <span class="day-run">{w.rack}</span>
      <div class="day-track">
        <svg viewBox={`0 0 ${until - from} ${high}`} preserveAspectRatio="none" aria-hidden="true">
          <g transform={`translate(0 ${high}) scale(1 -1)`}>
            <path class="rack-fill" d={`${d}H${until - from}V0Z`} />
            <path class="rack-full" d={`M0 ${places}H${until - from}`} vector-effect="non-scaling-stroke" />
          </g>
        </svg>
      </div>
    </div>
  );
}
