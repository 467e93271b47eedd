import { describe, expect, test } from 'vitest';
import { inEnglish, refusedBy } from '../../../test/said.ts';
import { asWritten, languages, say, tell, type Saying } from '../../words/index.ts';
import {
  cautions,
  cautionsFor,
  cancellationSteps,
  certaintyOf,
  colophon,
  documentationSheet,
  dryingFactor,
  foldLog,
  labelsFor,
  logLine,
  numberEdition,
  nameSheets,
  openTimeAdvice,
  orderInRun,
  planDay,
  planSheets,
  proofsFor,
  readLog,
  registerRows,
  sayFault,
  sheetsFromCount,
  sheetsToStart,
  teachingHandout,
  usualFaults,
  writeCsv,
} from './index.ts';
import type { CountEvent, DayInput, RecordFacts, Sheet } from './index.ts';

const codeOf = (act: () => unknown): string => {
  const [{ code, advice }] = refusedBy(act);
  expect(inEnglish(advice)).toMatch(/^[A-Z].+\.$/);
  return code;
};

const proofs = { artistsProofShare: 0.1, batProofs: 1, printersProofs: 1, horsCommerce: 0 };

describe('sheets', () => {
  const spoilagePerRun = Array.from({ length: 6 }, () => 0.05);

  test('the rule of thumb meets the edition far less often than asked', () => {
    const six = sheetsToStart({ target: 12, spoilagePerRun, certainty: 0.9 });
    expect(six.rule).toBe(17);
    expect(certaintyOf(17, 12, spoilagePerRun)).toBeLessThan(0.75);
    expect(six.start).toBeGreaterThan(17);
    expect(certaintyOf(six.start, 12, spoilagePerRun)).toBeGreaterThanOrEqual(0.9);
    expect(six.throughRuns).toHaveLength(6);
  });

  test('zero sheets, no certainty and endless spoilage are refused', () => {
    expect(codeOf(() => sheetsToStart({ target: 0, spoilagePerRun, certainty: 0.9 }))).toBe('no-sheets');
    expect(codeOf(() => sheetsToStart({ target: 5, spoilagePerRun, certainty: 1 }))).toBe('certainty');
    expect(codeOf(() => sheetsToStart({ target: 5, spoilagePerRun: [1], certainty: 0.9 }))).toBe('spoilage');
    expect(codeOf(() => sheetsToStart({ target: 5, spoilagePerRun: [0.99, 0.99, 0.99], certainty: 0.9 }))).toBe('spoilage-high');
    expect(codeOf(() => planSheets({ papers: [], target: 5, certainty: 0.9, spoilagePerRun, setUpSheets: 3, proofs }))).toBe('no-paper');
    expect(
      codeOf(() =>
        planSheets({ papers: [{ id: 'a', name: 'A', count: 5 }], target: 0, certainty: 0.9, spoilagePerRun, setUpSheets: 3, proofs }),
      ),
    ).toBe('no-sheets');
  });

  test('the maker says how many prints a paper gets, and which paper the proofs come from', () => {
    const { papers } = planSheets({
      papers: [
        { id: 'a', name: 'Smooth', count: 20, target: 4 },
        { id: 'b', name: 'Rough', count: 20 },
      ],
      target: 10,
      certainty: 0.9,
      spoilagePerRun,
      setUpSheets: 3,
      proofs,
      proofsOn: 'b',
    });
    expect(papers.map((p) => [p.edition, p.proofs.total])).toEqual([
      [4, 0],
      [6, proofsFor(10, proofs).total],
    ]);
  });

  test('more proofs than sheets, more prints than sheets, and too few for certainty are told apart', () => {
    const plan = (count: number, wishes = proofs) =>
      planSheets({
        papers: [{ id: 'a', name: 'Smooth', count }],
        target: 10,
        certainty: 0.9,
        spoilagePerRun,
        setUpSheets: 3,
        proofs: wishes,
      }).problems.map((one) => one.code);
    expect(plan(5, { ...proofs, horsCommerce: 8 })).toEqual(['more-proofs-than-sheets']);
    expect(plan(11)).toEqual(['more-prints-than-sheets']);
    expect(plan(15)).toEqual(['sheets-short']);
    expect(plan(30)).toEqual([]);
  });

  test('sheets with an older print are kept apart and may skip a run', () => {
    const { papers, runs } = planSheets({
      papers: [
        { id: 'a', name: 'Smooth', count: 20 },
        { id: 'b', name: 'Blue print', count: 6, printed: true, skips: [0] },
      ],
      target: 12,
      certainty: 0.8,
      spoilagePerRun: [0.05, 0.05],
      setUpSheets: 3,
      proofs,
    });
    expect(papers.map((paper) => paper.apart)).toEqual([false, true]);
    expect(papers[1].runs.map((run) => run.run)).toEqual([1]);
    expect(orderInRun({ papers }, 0).map((one) => one.id)).toEqual(Array.from({ length: 20 }, (_, i) => `A${i + 1}`));
    expect(orderInRun({ papers }, 1).at(-1)).toEqual({ id: 'B6', paper: 'b' });
    expect(nameSheets({ papers })).toHaveLength(26);
    expect(runs[0].prepare).toBe(20);
    expect(runs[1].prepare).toBeGreaterThan(20);
  });
});

describe('the day', () => {
  const input: DayInput = {
    runs: [1, 2, 3].map((n) => ({ id: `r${n}`, name: `Run ${n}`, sheets: 20, setUpSheets: 3 })),
    startHour: 9,
    endHour: 17,
    pullsPerHour: 40,
    setUpMinutes: 35,
    cleanMinutes: 18,
    dryMinutes: 45,
    rackPlaces: 40,
    screens: 1,
    humidityPercent: 50,
  };

  test('three runs of twenty go into a day', () => {
    const plan = planDay(input);
    expect(plan.days).toBe(1);
    expect(plan.steps[0]).toMatchObject({ start: '09:00', what: 'mix', run: 'r1' });
    expect(plan.steps.filter((step) => step.what === 'pull').map((step) => step.run)).toEqual(['r1', 'r2', 'r3']);
    expect(plan.rackPeak).toBe(20);
    expect(planDay(input)).toEqual(plan);
  });

  test('slow ink makes hands wait; a second screen is set up in time that would be lost', () => {
    expect(planDay({ ...input, dryMinutes: 150 }).waitMinutes).toBeGreaterThan(60);
    const six = { ...input, runs: [1, 2, 3, 4, 5, 6].map((n) => ({ id: `r${n}`, name: `Run ${n}`, sheets: 30, setUpSheets: 3 })) };
    const [one, two] = [planDay(six), planDay({ ...six, screens: 2 })];
    expect(two.workMinutes).toBeCloseTo(one.workMinutes, 6);
    expect(two.workEnds).toBeLessThan(one.workEnds);
  });

  test('a small rack splits the run and says so', () => {
    const plan = planDay({ ...input, rackPlaces: 8 });
    expect(plan.rackPeak).toBe(8);
    expect(plan.problems.map((one) => one.code)).toEqual(expect.arrayContaining(['run-split', 'rack-full']));
    expect(plan.steps.filter((step) => step.what === 'pull' && step.run === 'r1').map((step) => step.sheets)).toEqual([
      [1, 8],
      [9, 16],
      [17, 20],
    ]);
  });

  test('runs that share a named screen wait for its washing', () => {
    const plan = planDay({ ...input, screens: 3, dryMinutes: 200, runs: input.runs.map((run) => ({ ...run, screen: 'fine' })) });
    const setUps = plan.steps.filter((step) => step.what === 'set-up');
    expect(setUps.map((step) => inEnglish(step.where))).toEqual(['fine', 'fine', 'fine']);
    expect(setUps.every((step) => step.screen?.id === setUps[0].screen?.id)).toBe(true);
    const firstClean = plan.steps.find((step) => step.what === 'clean')!;
    expect(setUps[1].startMinutes).toBeGreaterThanOrEqual(firstClean.endMinutes);
  });

  test('two at the press: one pulls while the other racks, washes and mixes; the day is shorter', () => {
    const [alone, two] = [planDay(input), planDay({ ...input, hands: 2 })];
    expect(two.workEnds).toBeLessThan(alone.workEnds - 60);
    expect(two.racked).toBe(true);
    const rack = two.steps.find((step) => step.what === 'rack')!;
    const pull = two.steps.find((step) => step.what === 'pull')!;
    expect([rack.who, pull.who]).toEqual([2, 1]);
    expect([rack.startMinutes, rack.endMinutes]).toEqual([pull.startMinutes, pull.endMinutes]);
    // 3 on newsprint and 20 sheets, at 60 an hour instead of 40.
    expect(pull.endMinutes - pull.startMinutes).toBeCloseTo(23, 6);
    expect(planDay({ ...input, hands: 2, pullsPerHourHelped: 80 }).steps.find((step) => step.what === 'pull')).toMatchObject({
      startMinutes: 575,
      endMinutes: 592.25,
    });
    expect(codeOf(() => planDay({ ...input, hands: 0 }))).toBe('hands');
  });

  test('a rack of nothing, a day of no hours, no runs, a day too short: each is refused', () => {
    expect(codeOf(() => planDay({ ...input, rackPlaces: 0 }))).toBe('rack-none');
    expect(codeOf(() => planDay({ ...input, endHour: 9 }))).toBe('day-hours');
    expect(codeOf(() => planDay({ ...input, runs: [] }))).toBe('no-runs');
    expect(codeOf(() => planDay({ ...input, endHour: 9.5 }))).toBe('day-short');
    expect(codeOf(() => planDay({ ...input, pullsPerHour: 0 }))).toBe('pace');
    expect(codeOf(() => planDay({ ...input, humidityPercent: 120 }))).toBe('humidity');
    expect(codeOf(() => planDay({ ...input, pullsPerHour: 2, dryMinutes: 9000, rackPlaces: 1 }))).toBe('day-endless');
    expect(codeOf(() => planDay({ ...input, runs: [{ id: 'r', name: 'R', sheets: ['1', '1'] }] }))).toBe('sheet-twice');
  });

  test('dry air asks for retarder up to its ceiling, then for another remedy', () => {
    expect(dryingFactor(75, 50)).toBe(2);
    expect(openTimeAdvice({ pullsPerHour: 40, humidityPercent: 60 }).retarderShare).toBe(0);
    expect(openTimeAdvice({ pullsPerHour: 40, humidityPercent: 40 }).retarderShare).toBeGreaterThan(0.02);
    const desert = openTimeAdvice({ pullsPerHour: 20, humidityPercent: 10 });
    expect(desert.retarderShare).toBe(0.1);
    expect(desert.problems[0].code).toBe('ink-dries-in-mesh');
  });
});

const runs = ['sky', 'kelp'];
const sheet = (id: string, more: Partial<Sheet> = {}): Sheet => ({ id, paper: 'smooth', runs, faults: [], ...more });

describe('the edition', () => {
  const sheets = [
    ...Array.from({ length: 9 }, (_, i) => sheet(`s${i + 1}`)),
    sheet('best', { kept: 'bat' }),
    sheet('early', { runs: ['sky'], kept: 'state' }),
    sheet('trial', { kept: 'colour-trial' }),
    sheet('smudged', { faults: [{ run: 'kelp', text: 'smudge', rejects: true }] }),
    sheet('speck', { faults: [{ run: 'kelp', text: 'speck', rejects: false }] }),
    sheet('news', { kept: 'set-up' }),
    sheet('end', { kept: 'cancellation' }),
    sheet('lost', { runs: ['sky'] }),
  ];
  const edition = numberEdition({
    sheets,
    runs,
    target: 6,
    proofs: { ...proofs, artistsProofShare: 0.3, horsCommerce: 0 },
    papersAre: 'sub-editions',
  });
  const penciled = (one: { readonly text: Saying | null }): string => (one.text ? inEnglish(one.text) : '');
  const written = (id: string): string => penciled(edition.sheets.find((one) => one.sheet.id === id)!);
  const facts: RecordFacts = {
    title: 'Tide pool',
    artist: 'A. Printer',
    year: 2025,
    imageMm: [180, 240],
    papers: [{ id: 'smooth', name: 'Smooth white', sizeMm: [250, 320] }],
    workshop: 'the back room',
    master: 'cancelled',
    posthumous: false,
    layers: [
      { name: 'Sky', stencil: asWritten('tide'), ink: asWritten('shell'), recipe: asWritten('45 : 55'), mesh: asWritten('77-48') },
      { name: 'Kelp', stencil: asWritten('kelp'), ink: asWritten('weed'), recipe: asWritten('85 : 15'), mesh: asWritten('77-48') },
    ],
  };

  test('the pencil writes numbers, proofs, states and trials', () => {
    expect(written('best')).toBe('B.A.T.');
    expect(written('s1')).toBe('1/6');
    expect(edition.sheets.filter((one) => one.kind === 'artists').map(penciled)).toEqual(['A/P I/II', 'A/P II/II']);
    expect(written('early')).toBe('State I');
    expect(written('trial')).toBe('Colour trial');
    expect(written('end')).toBe('Cancellation proof');
    expect([written('smudged'), written('news'), written('lost')]).toEqual(['', '', '']);
    expect(edition.sheets.find((one) => one.sheet.id === 'lost')!.kind).toBe('rejected');
    expect(edition.sizes).toEqual([{ paper: 'smooth', edition: 6, artists: 2, bat: 1, printers: 1, horsCommerce: 0, spare: 1 }]);
    expect(edition.problems.map((one) => one.code)).toEqual(['spare-sheets']);
  });

  test('without a target every good sheet is used and the proofs still get theirs', () => {
    const open = numberEdition({ sheets, runs, proofs, papersAre: 'varied' });
    expect(open.sizes[0]).toMatchObject({ edition: 8, artists: 1, printers: 1, bat: 1, spare: 0 });
    expect(codeOf(() => numberEdition({ sheets: [sheet('a'), sheet('a')], runs, proofs, papersAre: 'varied' }))).toBe('sheet-twice');
    expect(numberEdition({ sheets: [], runs, proofs, papersAre: 'varied' }).problems[0].code).toBe('no-good-sheet');
    expect(
      numberEdition({ sheets: sheets.slice(0, 3), runs, target: 9, proofs, papersAre: 'varied' }).problems.map((one) => one.code),
    ).toContain('edition-smaller');
  });

  test('the record tells what is known and leaves lines for the rest', () => {
    const record = documentationSheet(facts, edition);
    expect(inEnglish(record.fields.find((field) => field.id === 'edition')!.value!)).toBe(
      '6 numbered, 2 A/P, 1 B.A.T., 1 P/P, 1 state proof, 1 colour trial',
    );
    expect(record.problems.map((one) => one.path)).toEqual(['edition.record.otherEditions', 'edition.record.printer']);
    expect(record.rejected).toBe(2);
    expect(inEnglish(record.footing)).toContain('2 rejected, 1 good one without a number');
    expect(inEnglish(colophon(facts, edition))).toMatch(
      /^Tide pool, by A\. Printer, 2025\. Screenprint in two runs .* on Smooth white\. Image 180 × 240\u00a0mm\. .* at the back room\. The stencils were cancelled/,
    );
    expect(documentationSheet({ ...facts, master: 'kept' }, edition).problems.map((one) => one.code)).toContain('cancellation-mismatch');
    expect(cancellationSteps.length).toBeGreaterThan(2);
  });

  test('labels for what is signed, a row for every sheet', () => {
    expect(labelsFor(facts, edition)).toHaveLength(13);
    expect(labelsFor(facts, edition)[0].lines.map(({ what, text }) => [what, inEnglish(text)])).toEqual([
      ['title', 'Tide pool, 2025'],
      ['artist', 'A. Printer'],
      ['mark', '1/6'],
      ['medium', 'Screenprint, 180 × 240\u00a0mm, on Smooth white'],
    ]);
    const rows = registerRows(facts, edition, inEnglish);
    expect(rows).toHaveLength(sheets.length + 1);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    expect(rows.find(([id]) => id === 'smudged')![7]).toBe('kelp: smudge');
    expect(writeCsv([['a "b"', '=1+1', '-3']])).toBe('"a ""b""",\'=1+1,-3\r\n');
  });
});

describe('the count at the press', () => {
  const at = '2025-05-01T10:00:00Z';
  const events: CountEvent[] = [
    { kind: 'pull', run: 'sky', sheet: '1', at },
    { kind: 'pull', run: 'sky', sheet: '2', at },
    { kind: 'spoil', run: 'sky', sheet: '2', at, text: 'stuck to the stencil' },
    { kind: 'pull', run: 'sky', sheet: '3', at },
    { kind: 'undo', run: 'sky', sheet: '3', at },
    { kind: 'note', run: 'sky', sheet: '1', at, text: 'light at the corner' },
    { kind: 'pull', run: 'kelp', sheet: '1', at },
  ];
  const text = events.map((one, i) => logLine(i + 1, one)).join('');

  test('pulls, spoils, notes and undo add up, sheet by sheet', () => {
    const state = foldLog(readLog(text).events);
    expect(state.runs).toEqual([
      { run: 'sky', pulls: 2, sheets: ['1', '2'], spoiled: ['2'] },
      { run: 'kelp', pulls: 1, sheets: ['1'], spoiled: [] },
    ]);
    expect(state.last?.event).toMatchObject({ kind: 'pull', run: 'kelp' });
    const sheets = sheetsFromCount(
      state,
      [
        { id: '1', paper: 'smooth' },
        { id: '2', paper: 'smooth' },
      ],
      ['sky', 'kelp'],
    );
    expect(
      numberEdition({
        sheets,
        runs: ['sky', 'kelp'],
        proofs: { ...proofs, batProofs: 0, artistsProofShare: 0, printersProofs: 0 },
        papersAre: 'varied',
      }).sheets.map((one) => one.text),
    ).toEqual([say('edition.markVaried', { number: 1, of: 1 }), null]);
  });

  test('an undo can name an older event', () => {
    const state = foldLog([...readLog(text).events, { number: 8, event: { kind: 'undo', run: 'sky', sheet: '2', at, of: 3 } }]);
    expect(state.sheets.find((one) => one.sheet === '2')!.spoiled).toBe(false);
  });
});

describe('faults', () => {
  const at = '2025-05-01T10:00:00Z';
  const spoiled: CountEvent = { kind: 'spoil', run: 'sky', sheet: '1', at };
  const lifeOf = (text: string) => foldLog(readLog(text).events).sheets[0];
  /** A line as counts of before wrote it. */
  const oldLine = (number: number, event: unknown): string => logLine(number, event as CountEvent);

  test('a usual fault is kept by its id and said in every language', () => {
    const line = logLine(1, { ...spoiled, fault: 'off-register' });
    expect(line).toContain('"fault":"off-register"');
    const [{ event }] = readLog(line).events;
    expect(event).toEqual({ ...spoiled, fault: 'off-register' });
    for (const { id } of languages)
      for (const fault of usualFaults) expect(tell(sayFault({ fault }), { language: id, units: 'mm' })).not.toMatch(/\w\.\w/);
    expect(tell(sayFault({ fault: 'off-register' }), { language: 'de', units: 'mm' })).toBe('Passer stimmt nicht');
  });

  test('what the printmaker wrote stands as written, in every language', () => {
    const life = lifeOf(logLine(1, { ...spoiled, text: 'cat walked over it' }));
    expect(tell(sayFault(life.faults[0]), { language: 'de', units: 'mm' })).toBe('cat walked over it');
    expect(inEnglish(sayFault({}))).toBe('spoiled');
  });

  test('a count of before is read: its English and German words are the usual faults, others stay', () => {
    const words = (kept: object): unknown => readLog(oldLine(1, { ...spoiled, ...kept })).events[0].event;
    expect(words({ fault: 'off register' })).toEqual({ ...spoiled, fault: 'off-register' });
    expect(words({ fault: 'verschmiert' })).toEqual({ ...spoiled, fault: 'smeared' });
    expect(words({ fault: 'smudged' })).toEqual({ ...spoiled, text: 'smudged' });
    const german = ['Passer stimmt nicht', 'verschmiert', 'Klecks', 'zu wenig Farbe', 'geknickt', 'Fingerabdruck'];
    const english = ['off register', 'smeared', 'blot', 'thin ink', 'creased', 'fingerprint'];
    for (const all of [german, english])
      expect(all.map((text) => readLog(oldLine(1, { ...spoiled, kind: 'note', text })).events[0].event)).toEqual(
        usualFaults.map((fault) => ({ ...spoiled, kind: 'note', fault })),
      );
  });

  test('a fault named after the sheet was spoiled tells why; on a good sheet it is a note', () => {
    const named: CountEvent = { kind: 'note', run: 'sky', sheet: '1', at, fault: 'blot' };
    expect(lifeOf(logLine(1, spoiled) + logLine(2, named))).toMatchObject({ faults: [{ run: 'sky', fault: 'blot' }], notes: [] });
    expect(lifeOf(logLine(1, { ...spoiled, kind: 'pull' }) + logLine(2, named))).toMatchObject({ faults: [], notes: [{ fault: 'blot' }] });
    // Another run, another matter; and a second fault does not wipe out the first.
    expect(lifeOf(logLine(1, spoiled) + logLine(2, { ...named, run: 'kelp' })).notes).toHaveLength(1);
    expect(lifeOf(logLine(1, spoiled) + logLine(2, named) + logLine(3, { ...named, fault: 'creased' }))).toMatchObject({
      faults: [{ fault: 'blot' }],
      notes: [{ fault: 'creased' }],
    });
  });
});

describe('hand-out and cautions', () => {
  test('the hand-out has a step for each run, this job’s numbers, and a blank version', () => {
    const handout = teachingHandout({
      title: 'Tide pool',
      imageMm: [180, 240],
      sheetMm: [250, 320],
      mesh: asWritten('77-48'),
      register: asWritten('Three stops.'),
      gap: asWritten('Gap 2 mm.'),
      dryMinutes: 48.6,
      setUpSheets: 3,
      layers: [
        {
          id: 'sky',
          name: 'Sky',
          stencil: asWritten('piece in coated paper'),
          material: { id: 'paper', name: asWritten('Coated paper') },
          ink: { id: 'pink', name: asWritten('Shell pink') },
          recipe: asWritten('45 : 55'),
          amount: asWritten('60 g'),
        },
        {
          id: 'foam',
          name: 'Foam',
          stencil: asWritten('window in film'),
          material: { id: 'film', name: asWritten('Film') },
          ink: null,
          recipe: null,
          amount: asWritten('40 g'),
          lookFor: 'the rim',
        },
      ],
      papers: [{ name: 'Smooth white', sheets: 20 }],
    });
    expect(handout.steps.map((step) => step.number)).toEqual(handout.steps.map((_, i) => i + 1));
    const runs = handout.steps.filter((step) => step.picture.kind === 'after').map((step) => [inEnglish(step.title), inEnglish(step.text)]);
    expect(runs).toEqual([
      [
        'Run 1: Sky',
        'Piece in coated paper; Shell pink, 45 : 55; 60 g. 3 on newsprint first, then every sheet in the same order. Dry for 49\u00a0min.',
      ],
      [
        'Run 2: Foam',
        'Window in film; ink open: choose; 40 g. 3 on newsprint first, then every sheet in the same order. Look for: the rim',
      ],
    ]);
    expect(handout.bring.map((one) => inEnglish(one))).toContain('6 sheets of newsprint, to set up with');
    expect(inEnglish(handout.intro)).toBe('A print in 2 runs, 180 × 240\u00a0mm on sheets of 250 × 320\u00a0mm.');
    expect(inEnglish(handout.intro, { language: 'en', units: 'in' })).toContain('7.087 × 9.449\u00a0in');
    expect(handout.blank.table.rows).toBe(5);
  });

  test('cautions stand where the risk is, short, and defer to labels', () => {
    expect(new Set(cautions.map((one) => one.id)).size).toBe(cautions.length);
    for (const caution of cautions) expect(inEnglish(caution.text).length).toBeLessThan(260);
    expect(cautionsFor('cut').map((one) => one.id)).toEqual(['blades']);
    expect(cautions.filter((one) => /label|local/.test(inEnglish(one.text))).length).toBeGreaterThanOrEqual(5);
  });
});
