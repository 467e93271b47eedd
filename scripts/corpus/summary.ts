import type { Line } from './record.ts';

/** More than this for one stencil is a hang. */
const mostMs = 5000;

/** What must not be, of one drawing. */
export function failuresOf({ name, judged, crash }: Line): string[] {
  if (crash !== undefined) return [`CRASH ${name}: ${crash}`];
  if (!judged) return [`NOT ENDED ${name}`];
  return [
    ...judged.stuck.map((side) => `NO WAY OUT ${name}: ${side}`),
    ...(judged.lie ? [`FALSE CERTIFICATE ${name}: ${judged.lie}`] : []),
    ...judged.sides.filter((s) => s.ms > mostMs).map((s) => `HANG ${name}: ${s.side} ${seconds(s.ms)}`),
  ];
}

const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;

export function summary(lines: readonly Line[], asked: number): string {
  const ended = lines.flatMap((line) => (line.judged ? [{ name: line.name, ...line.judged }] : []));
  const sides = ended.flatMap(({ name, sides }) => sides.map((side) => ({ name, ...side })));
  const whole = sides.filter((s) => s.holds).length;
  const out = [
    `${lines.length} of ${asked} drawings: ${ended.filter((d) => !d.refused).length} worked; ${whole} of ${sides.length} stencils hold (refused ${(
      (100 * (sides.length - whole)) / Math.max(1, sides.length)
    ).toFixed(2)} %), ${ended.reduce((sum, d) => sum + d.mended, 0)} of them after mending; false ${ended.filter((d) => d.lie).length}, ` +
      `crashed ${lines.filter((l) => l.crash !== undefined).length}, not ended ${lines.filter((l) => !l.judged && l.crash === undefined).length}`,
  ];
  const groups = (found: readonly (readonly [string, string])[], head: string): void => {
    const by = new Map<string, string[]>();
    for (const [key, name] of found) by.set(key, [...(by.get(key) ?? []), name]);
    for (const [key, names] of [...by].sort((a, b) => b[1].length - a[1].length))
      out.push(`  ${head} ${String(names.length).padStart(5)}  ${key} (${names.slice(0, 4).join(', ')}${names.length > 4 ? ', …' : ''})`);
  };
  groups(
    ended.flatMap((d) => (d.sides.length === 0 && d.refused ? [[d.refused, d.name] as const] : [])),
    'not read',
  );
  groups(
    sides.flatMap((s) => (s.refused ? [[s.refused, s.name] as const] : [])),
    'refused',
  );
  groups(
    sides.filter((s) => s.holds).flatMap((s) => [...new Set(s.told)].map((code) => [code, s.name] as const)),
    'told',
  );
  const slow = [...sides].sort((a, b) => b.ms - a.ms);
  if (slow.length > 0)
    out.push(
      `slowest: ${slow
        .slice(0, 5)
        .map((s) => `${s.name} ${s.side} ${seconds(s.ms)}`)
        .join(
          ', ',
        )}; median ${slow[slow.length >> 1].ms.toFixed(0)} ms; reading at most ${seconds(Math.max(...ended.map((d) => d.readMs)))}`,
    );
  const refusals = sides.filter((s) => !s.holds).sort((a, b) => b.ms + b.waysMs - a.ms - a.waysMs);
  if (refusals.length > 0)
    out.push(
      `refusals with their ways out: ${refusals
        .slice(0, 8)
        .map((s) => `${s.name} ${s.side} ${seconds(s.ms)} + ${seconds(s.waysMs)}, ${s.ways} ways, ${s.faults} faults`)
        .join('; ')}`,
    );
  return out.join('\n');
}
