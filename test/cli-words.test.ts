import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { commands } from '../src/cli/laydown.ts';
import { columns, wrapped } from '../src/cli/say/table.ts';
import { calling } from './command.ts';

// What the command line says, in both languages and in inches; called here, not as a process of its own.
// The same Job gives the same Plan: it is made once for all that is asked about it.

const tidePool = fileURLToPath(new URL('../examples/tide-pool', import.meta.url));
let base: string, table: string, inches: string;

beforeAll(async () => {
  base = mkdtempSync(join(tmpdir(), 'laydown-words-'));
  // Ten test sheets, read and written down.
  const { out } = await laydown(['register', tidePool, '--form']);
  table = join(base, 'readings.csv');
  const rows = out.trim().split('\r\n');
  writeFileSync(table, rows.map((row, i) => (i === 0 ? row : row.replace(/,,$/, `,${(i % 5) - 2},${(i % 3) - 1}`))).join('\n'));
  inches = jobWith('inches', (it) => {
    it['units'] = 'in';
    it.layers.find((l) => l.id === 'kelp')!.offContactMm = 12;
  });
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

const laydown = calling;

/** tide-pool, with a change to its document. */
function jobWith(
  name: string,
  change: (job: Record<string, unknown> & { layers: { id: string; offContactMm?: number }[] }) => void,
): string {
  const folder = join(base, name);
  cpSync(tidePool, folder, { recursive: true });
  const path = join(folder, 'job.json'),
    job = JSON.parse(readFileSync(path, 'utf8'));
  change(job);
  writeFileSync(path, JSON.stringify(job));
  return folder;
}

/** What the printmaker wrote in the job: it stands as it is in every language. */
function namesIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(namesIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    typeof inner === 'string' ? (['name', 'title', 'maker', 'note', 'id'].includes(key) ? [inner] : []) : namesIn(inner),
  );
}
const names = namesIn(JSON.parse(readFileSync(join(tidePool, 'job.json'), 'utf8'))).sort((a, b) => b.length - a.length);

const english =
  /\b(?:the|of|and|with|for|from|this|that|which|these|sheets?|layers?|inks?|stencils?|papers?|pieces?|bridges?|islands?|is|are|be|to|by|if|or|on|at|as|it|its|you|your|not|runs?|pots?|colours?|jobs?|within|wide|first|more|less|each|both|than|then|when|where|left|right|top|bottom|gap|mesh|wet|dry|add|start|choose|give|write|window|edge|hinge|board|pull|wash|wait|night|error|warning|note|days?|hands|good|proofs?|unknown|easy|steady|fine)\b/gi;
/** The same in both languages, or typed as it stands. */
const typed =
  /--[\w-]+|"[^"]*"|„(?:laydown[^“]*|stock|knife|day)“|\blaydown \w+|\S*\w\.(?:json|csv|log|laydown|svg|dxf|pdf|txt)\b|\((?:lightness|chroma|contrast|nearest|more|less|none|clean)\b[^)]*\)|\b(?:en|de) \(\w+\)|\bclear-base|\bProofs?\b|^ {2,4}(?:wanted|colours|range|clean|steady|[a-z]+)(?= {2})/gm;

/** English words in what was told in German, names apart. */
function englishIn(text: string): string[] {
  const bare = names.reduce((rest, name) => rest.replaceAll(name, '…'), text.replace(typed, '…'));
  return [...bare.matchAll(english)].map((found) => bare.slice(Math.max(0, found.index - 30), found.index + 30));
}

const answers = (job: string): readonly (readonly string[])[] => [
  ['check', job],
  ['press', job],
  ['day', job],
  ['day', job, '--hands', '2'],
  ['edition', job],
  ['register', job, 'TABLE'],
  ['forecast', job],
  ['order', job, '--keep', '3'],
  ['recipe', job, '45 20 -35'],
  ['recipe', job, '20 80 -80', '--retarder', '20'],
  ['mix', job, 'urchin'],
  ['pot', job, 'water', '--holds', 'rockpool=60,clear-base=40', '--reads', '78 -28 -15'],
  ['pot', job, 'water', '--looks', 'too weak'],
  ['again', job, 'water', '--lot', 'rockpool=66 -33 -17'],
  ['cut', job, 'urchin'],
  ['cut', job, 'kelp'],
  ['cut', job, '--stock', '1'],
];

test('English is found where there is some', async () => {
  for (const args of [['--help'], ['cut', '--help'], ['check', tidePool], ['press', tidePool], ['day', tidePool]])
    expect(englishIn((await laydown(args)).out).length, args.join(' ')).toBeGreaterThan(5);
});

describe('help', () => {
  test.each(commands.map(({ name }) => name))('%s: in German no English, in English no key left over', async (name) => {
    const german = await laydown(['--lang', 'de', name, '--help']);
    expect(german.code).toBe(0);
    expect(
      englishIn(
        german.out.replace(
          /^laydown [\s\S]*?\n\n|layers\.strength|hand-out|register-test|proof-strip|light-and-grounds|set-up|look-up/g,
          '',
        ),
      ),
    ).toEqual([]);
    const inEnglish = await laydown([name, '--help']);
    expect(inEnglish.out).toMatch(new RegExp(`^laydown ${name}\\b`));
    expect(inEnglish.out).not.toMatch(/\bhelp\.\w/);
    expect(inEnglish.out).toContain('--lang LANGUAGE');
    for (const { out } of [german, inEnglish]) for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    // Every option is explained, in the same place on the line.
    const { options = {} } = commands.find((c) => c.name === name)!;
    for (const option of Object.keys(options)) expect(german.out).toMatch(new RegExp(`^  --${option}\\b`, 'm'));
  });

  test('of all commands', async () => {
    const { out } = await laydown(['--help'], { LANG: 'de_AT.UTF-8' });
    expect(out).toContain('ARBEIT ist ein Ordner');
    expect(englishIn(out)).toEqual([]);
    for (const { name } of commands) expect(out).toMatch(new RegExp(`^  ${name} +\\S`, 'm'));
  });
});

describe('answers', () => {
  // In millimetres in German, in inches in English: each language and each unit with everything that is answered.
  test.each(answers('JOB').map((args) => [args.join(' '), args] as const))(
    '%s: in German no English word but what the job itself is written in',
    async (_, args) => {
      const { out, err } = await laydown([
        ...args.map((arg) => (arg === 'JOB' ? tidePool : arg === 'TABLE' ? table : arg)),
        '--lang',
        'de',
      ]);
      expect(englishIn(out + err)).toEqual([]);
      expect(out.length).toBeGreaterThan(80);
    },
    30_000,
  );

  test.each([...answers('JOB'), ['packet', 'JOB', '--out', 'PACKET']].map((args) => [args.join(' '), args] as const))(
    '%s: about a job in inches no millimetres',
    async (_, args) => {
      const { out, err } = await laydown(
        args.map((arg) => (arg === 'JOB' ? inches : arg === 'TABLE' ? table : arg === 'PACKET' ? join(base, 'packet') : arg)),
      );
      // A cutting machine's file is in millimetres, and says so.
      expect((out + err).replace(/^ +cut\/.*\.dxf .*in mm$/gm, '')).not.toMatch(
        /\d\s?(?:mm|cm|m|µm|mm²|cm²|m²|g|kg|mL)(?![\wµ²])|\bmm\b|\bcm\b/,
      );
      expect(out.length).toBeGreaterThan(80);
    },
    60_000,
  );

  test('numbers have the decimal mark of the language, names and what was typed stay', async () => {
    const { out } = await laydown(['mix', tidePool, 'urchin', '--scale', '0.1', '--lang', 'de']);
    expect(out).toMatch(/Dusk violet +\d+,\d\sg +\d+,\d\s% des Volumens/);
    const { err } = await laydown(['mix', tidePool, '1.5 mm blue', '--lang=de']);
    expect(err).toContain('„1.5 mm blue“');
  });

  test('for programs stay as they are: paths, codes, English', async () => {
    const plain = await laydown(['day', tidePool, '--json']),
      german = await laydown(['day', tidePool, '--json', '--lang', 'de']);
    expect(german.out).toBe(plain.out);
    const { steps } = JSON.parse(plain.out) as { steps: { text: string }[] };
    expect(steps[0].text).toMatch(/^[A-Z].*\.$/);
    const press = JSON.parse((await laydown(['press', tidePool, '--json', '--lang', 'de'])).out) as {
      register: { problems: { code: string; path: string; message: string; where: string }[] };
    };
    const spread = press.register.problems.find((p) => p.path.endsWith('.spreadMm'))!;
    expect(spread.message).toContain('bare paper can show');
  });
});

describe('which language', () => {
  const first = async (args: readonly string[], environment: NodeJS.ProcessEnv = {}): Promise<string> =>
    (await laydown(args, environment)).out.split('\n')[0];

  test('as asked, before the command or after it; else as the system is set', async () => {
    for (const args of [
      ['--lang', 'de', 'check', tidePool],
      ['check', '--lang', 'de', tidePool],
      ['check', tidePool, '--lang=de-CH'],
    ])
      expect(await first(args, { LANG: 'en_GB' })).toMatch(/^Warnung: Lauf/);
    expect(await first(['check', tidePool])).toMatch(/^warning: run/);
    expect(await first(['check', tidePool], { LANG: 'de_DE.UTF-8' })).toMatch(/^Warnung/);
    expect(await first(['check', tidePool], { LANG: 'de_DE', LC_MESSAGES: 'en_IE' })).toMatch(/^warning/);
    expect(await first(['check', tidePool], { LANG: 'en', LC_MESSAGES: 'en', LC_ALL: 'de' })).toMatch(/^Warnung/);
    expect(await first(['check', tidePool], { LANG: 'fr_FR', LC_ALL: '' })).toMatch(/^warning/);
  });

  test('there is none of is refused, and which there are is said', async () => {
    for (const args of [
      ['--lang', 'fr', '--help'],
      ['check', tidePool, '--lang=klingon'],
      ['check', tidePool, '--lang'],
    ]) {
      const { code, err } = await laydown(args);
      expect(code).toBe(2);
      expect(err).toMatch(/^error: the option --lang: .* Choose en \(English\) or de \(Deutsch\)\.$/m);
    }
  });

  test('on paper: as asked, else as the job has it, else as the system is set', async () => {
    const plain = tidePool,
      german = jobWith('german', (job) => (job['language'] = 'de'));
    const drawn = async (name: string, job: string, args: readonly string[], environment: NodeJS.ProcessEnv): Promise<string> => {
      const file = join(base, `${name}.svg`);
      expect((await laydown(['cut', job, 'urchin', '--out', file, ...args], environment)).code).toBe(0);
      return readFileSync(file, 'utf8');
    };
    expect(await drawn('a', plain, [], {})).toMatch(/window, run 5/);
    expect(await drawn('b', plain, [], { LANG: 'de_DE' })).toMatch(/Fenster, Lauf 5/);
    expect(await drawn('c', german, [], { LANG: 'en_GB' })).toMatch(/Fenster, Lauf 5/);
    expect(await drawn('d', german, ['--lang', 'en'], { LANG: 'de_DE' })).toMatch(/window, run 5/);
    // The terminal itself does not follow the job.
    expect(await first(['check', german], { LANG: 'en_GB' })).toMatch(/^warning/);
  });
});

describe('a call that can’t be understood', () => {
  test.each([
    [['fly'], /^error: the command: Laydown has no command “fly”\. “laydown --help” lists them all\.$/m],
    [
      ['packet', 'x', '--wings'],
      /^error: the option --wings: “packet” has no such option\. It takes --out, --replace, --paper, --only, --black, --large, --split, --strict, --json, --lang and --help\.$/m,
    ],
    [['packet', 'x', '--wings=2'], /the option --wings: /],
    [['packet', 'x', '-q'], /the option -q: /],
    [['packet', 'x', '--out'], /^error: the option --out: It needs a value\. Write --out FOLDER\.$/m],
    [['packet', 'x', '--out', '--json'], /the option --out: It needs a value/],
    [['packet', 'x', '--json=yes'], /^error: the option --json: It takes no value\. Write --json alone\.$/m],
    [['recipe', 'x', '62', '-38.5', '12'], /^error: the option -38\.5: .*Put numbers that belong together in quotes/m],
  ])('%j: which option, what to do, how it is called', async (args, said) => {
    const { code, out, err } = await laydown(args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(said);
    if (args.length > 1)
      expect(err).toMatch(new RegExp(`^laydown ${args[0]} .*\n(?: {4}.*\n)*laydown ${args[0]} --help says more\\.$`, 'm'));
  });

  test('every fault at once, in German too', async () => {
    const { err } = await laydown(['day', 'x', '--wings', '--hands', '--lang', 'de']);
    expect(err).toMatch(/^Fehler: die Option --wings: „day“ hat keine solche Option\. Es gibt --hands, --json, --lang und --help\.$/m);
    expect(err).toMatch(/^Fehler: die Option --hands: Sie braucht einen Wert\. --hands N schreiben\.$/m);
    expect(englishIn(err)).toEqual([]);
  });

  test('a value may begin with a minus', async () => {
    const { err } = await laydown(['recipe', tidePool, '45 20 -35', '--retarder', '-3']);
    expect(err).toMatch(/the option --retarder: “-3” can’t be used here\. Give a number from 0 to 50\./);
  });

  test.each([
    [['check'], /der Befehl: Welche Arbeit\?/],
    [['check', 'nowhere'], /nowhere: Hier ist nichts\./],
    [['mix', tidePool], /Welche Schicht\? Eine davon nennen: sky, water/],
    [['mix', tidePool, 'mauve'], /die Schichten: Die Arbeit hat keine Schicht „mauve“\./],
    [
      ['order', tidePool, '--for', 'speed'],
      /die Option --for: „speed“ ist kein Wunsch\. wanted, colours, range, clean oder steady schreiben\./,
    ],
    [['order', tidePool, '--before', 'sky'], /nennt nicht zwei Schichten/],
    [['recipe', tidePool, '45 20'], /der gewünschte Farbton: „45 20“ ist kein Lab-Farbton/],
    [['pot', tidePool, 'water'], /Was ist im Topf\?/],
    [['pot', tidePool, 'water', '--looks', 'mauve'], /"too weak", "too strong"/],
    [['pot', tidePool, 'water', '--holds', 'rockpool', '--reads', '1 2 3'], /„rockpool“ ist keine Menge/],
    [['pot', tidePool, 'water', '--holds', 'rockpool=1', '--reads', '90 0 0', '--reads', '80 0 0'], /Aufzüge \(2\) und Zugaben \(0\)/],
    [['again', tidePool, 'water'], /Welche Farbe hat eine neue Charge\?/],
    [['readings'], /Welche Messdatei\?/],
    [['readings', 'nowhere.txt'], /nowhere\.txt: Diese Datei gibt es nicht\./],
    [['photo'], /Welches Foto\?/],
    [['drawdowns'], /Welche Datei soll geschrieben werden\?/],
    [['shelf'], /Welches Regal\?/],
    [['trace'], /Welches Foto\?/],
    [['separate'], /Wessen Farben sollen genommen werden\?/],
    [['separate', '--with', tidePool], /Welche Vorlage\?/],
    [['cut', tidePool, 'urchin', '--paper', 'a4'], /Nur ein Materialbogen/],
    [['cut', tidePool, '--stock', '99'], /Diesen Bogen gibt es nicht; es gibt die Bogen 1, 2/],
    [['edition', tidePool, '--csv'], /Noch ist nichts gezählt\./],
    [['packet', tidePool, '--paper', 'a7'], /die Option --paper: „a7“ /],
    [['register', tidePool], /Noch wurden keine Testbogen abgelesen/],
  ])('%j is refused in German', async (args, said) => {
    const { code, err } = await laydown([...args, '--lang', 'de']);
    expect(code).toBe(1);
    expect(err).toMatch(said);
    expect(englishIn(err.replace(/sky, .*|wanted, .*|too weak.*/, ''))).toEqual([]);
  });

  test('no path of the job’s document is read by a printmaker', async () => {
    const job = jobWith('broken', (it) => {
      it.layers[0] = { ...it.layers[0], ink: 'nowhere', spreadMm: 'wide' } as never;
    });
    for (const language of ['en', 'de']) {
      const { out, err } = await laydown(['check', job, '--lang', language]);
      expect(out + err).toMatch(language === 'en' ? /run 1 \(Sky\)/ : /Lauf 1 \(Sky\)/);
      expect(out + err).not.toMatch(/layers\[|spreadMm/);
    }
  });
});

describe('tables', () => {
  test('columns are as wide as what is told in them', () => {
    expect(
      columns(
        [
          ['Gewebe', '1,5', 'x'],
          ['e\u0301', '100', ''],
        ],
        { right: [1], indent: '> ' },
      ),
    ).toEqual(['> Gewebe  1,5  x', '> e\u0301       100']);
    expect(columns([])).toEqual([]);
  });

  test('texts are broken between words', () => {
    expect(wrapped('eins zwei drei', 9)).toEqual(['eins zwei', 'drei']);
    expect(wrapped('Druckfolgenverzeichnis', 5)).toEqual(['Druckfolgenverzeichnis']);
  });
});
