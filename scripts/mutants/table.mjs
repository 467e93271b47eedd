/** Writes docs/mutants.md from out/mutants.json (or the reports given): what was caught by room and file, and what survived, with why. */
import { readFileSync, writeFileSync } from 'node:fs';

const reports = process.argv.slice(2).length > 0 ? process.argv.slice(2) : ['out/mutants.json'];
const files = Object.assign({}, ...reports.map((path) => JSON.parse(readFileSync(path, 'utf8')).files));

/** Why a survivor is none to worry about; the first that fits. Whatever fits none is open. */
const reasons = [
  [
    'a loop that goes one too far: typed arrays keep nothing there, the series ends by itself',
    (m) => m.mutatorName === 'EqualityOperator' && /^[\w]+ < [\w.]+$/.test(m.was),
  ],
  [
    'the boundary itself: both sides give the same there, or no figure of the trade lies on it',
    (m) => m.mutatorName === 'EqualityOperator',
  ],
  [
    'a limit that keeps absurd figures out, by one',
    (m) => m.mutatorName === 'Number' && Math.abs(Number(m.was.replaceAll('_', ''))) >= 100,
  ],
  [
    'how near a search or a series comes; both are far finer than a figure that is shown',
    (m) => m.mutatorName === 'Number' && Number(m.was) !== 0 && Math.abs(Number(m.was)) < 1e-3,
  ],
  [
    'a nought to start from, or to end on, that the sum or the largest of what follows covers',
    (m) => m.mutatorName === 'Number' && m.was === '0',
  ],
  ['a shortcut or a check before one that finds the same', (m) => m.mutatorName === 'ConditionalExpression'],
];

const rooms = new Map();
for (const [path, { source, mutants }] of Object.entries(files).sort(([a], [b]) => a.localeCompare(b))) {
  const [, room, name] = /src\/core\/(\w+)\/(.+)$/.exec(path);
  const lines = source.split('\n');
  const counted = mutants.filter((m) => m.status !== 'Ignored');
  const caught = counted.filter((m) => m.status === 'Killed' || m.status === 'Timeout').length;
  const left = counted
    .filter((m) => m.status === 'Survived' || m.status === 'NoCoverage')
    .map((m) => {
      const { start, end } = m.location;
      const was = lines[start.line - 1].slice(start.column - 1, end.line === start.line ? end.column - 1 : undefined);
      return { ...m, path, line: start.line, was };
    });
  rooms.set(room, [
    ...(rooms.get(room) ?? []),
    { name, all: counted.length, caught, ended: counted.filter((m) => m.status === 'Timeout').length, left },
  ]);
}

const percent = (caught, all) => `${((100 * caught) / all).toFixed(1)} %`;
const sum = (list, key) => list.reduce((total, one) => total + one[key], 0);
const short = (text) => text.replace(/\s+/g, ' ').slice(0, 60).replaceAll('|', '\\|').replaceAll('`', '´');

const out = [readFileSync(new URL('./mutants-head.md', import.meta.url), 'utf8').trim(), ''];
out.push('## What was caught', '', '| room | file | mutants | caught | of these by time | share |', '|---|---|---:|---:|---:|---:|');
for (const [room, list] of rooms) {
  out.push(
    `| **${room}** | | ${sum(list, 'all')} | ${sum(list, 'caught')} | ${sum(list, 'ended')} | **${percent(sum(list, 'caught'), sum(list, 'all'))}** |`,
  );
  for (const one of list) out.push(`| | ${one.name} | ${one.all} | ${one.caught} | ${one.ended} | ${percent(one.caught, one.all)} |`);
}
const missing = JSON.parse(readFileSync('stryker.config.json', 'utf8')).mutate.filter((path) => !(path in files));
if (missing.length > 0)
  out.push('', `Not in the reports this page was made of: ${missing.map((path) => path.replace('src/core/', '')).join(', ')}.`);
out.push('', '## What survived, and why', '', 'Line: what stood there → what it became.', '');
for (const [room, list] of rooms) {
  for (const one of list.filter((file) => file.left.length > 0)) {
    out.push(`**${room}/${one.name}**`, '');
    const by = new Map();
    for (const m of one.left) {
      const why = reasons.find(([, fits]) => fits(m))?.[0] ?? 'open: no test tells it yet';
      by.set(why, [...(by.get(why) ?? []), `${m.line}: \`${short(m.was)}\` → \`${short(m.replacement ?? '')}\``]);
    }
    for (const [why, all] of by) out.push(`- ${why}: ${all.join('; ')}.`);
    out.push('');
  }
}
writeFileSync('docs/mutants.md', `${out.join('\n').trim()}\n`);
