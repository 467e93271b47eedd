import type {
  AreaText,
  DeltaText,
  FilmText,
  LabText,
  LengthText,
  ListText,
  MassText,
  NameText,
  NumberText,
  SayingText,
  ShareText,
  TimeText,
} from '../../text.ts';
import { many } from '../grammar.ts';

const pieces = (n: number): string => many(n, 'piece', 'pieces');
const bridges = (n: number): string => many(n, 'bridge', 'bridges');

/** What commands answer about a job as it will be cut and printed. */
export const answers = {
  // Shared
  metres: ({ metres }: { metres: NumberText }) => `${metres} m`,
  run: ({ run, layer }: { run: number; layer: NameText }) => `run ${run}, ${layer}`,

  // check
  nothingToMend: 'Nothing to mend.',
  toMend: ({ errors, others }: { errors: number; others: number }) => `${errors} to mend, ${others} to look at.`,

  jobMark: ({ mark }: { mark: NameText }) => `Job ${mark}`,
  packetOld: ({ was, is }: { was: NameText; is: NameText }) => `This packet was made from ${was}; the job is now ${is}. It no longer fits.`,
  packetAnew: 'Make it anew, and throw the old pages away.',

  // packet
  files: ({ folder, n }: { folder: NameText; n: number }) => `${folder}: ${many(n, 'file', 'files')}`,
  jobIs: ({ title, runs, papers, image }: { title: NameText; runs: number; papers: number; image: LengthText }) =>
    `${title}: ${many(runs, 'run', 'runs')} on ${many(papers, 'paper', 'papers')}, ${image}`,
  overlapsOn: ({ n, paper, band }: { n: number; paper: NameText; band: DeltaText }) =>
    `${many(n, 'overlap covers', 'overlaps cover')} area on ${paper}; foreseen to within ± ${band} ΔE00 at worst`,
  toCutAndMix: ({ along, bridges: n, ink }: { along: SayingText; bridges: number; ink: MassText }) =>
    `${along} to cut, ${bridges(n)}; ${ink} of ink to mix`,

  // forecast
  within: ({ band }: { band: DeltaText }) => `± ${band}`,
  barePaper: 'bare paper',
  bandIs: ({ why }: { why: SayingText }) => `±: ${why}`,
  worthReading: ({ band }: { band: DeltaText }) => `Worth reading first (the mean band is ± ${band} now):`,
  worthOne: ({ layers, at, band }: { layers: SayingText; at: LengthText; band: DeltaText }) =>
    `${layers}, ${at} from the image’s top left corner: then ± ${band}`,
  underLamp: ({ paper, lamp }: { paper: NameText; lamp: SayingText }) => `${paper}. ${lamp}`,
  onGround: ({ n, area }: { n: number; area: AreaText }) => `ground ${n} of the sheet, ${area}:`,
  noneWanted: 'No colour is wanted of any overlap.',
  wantedHead: 'Wanted colours:',
  wantedNow: ({
    layers,
    wanted,
    deltaE,
    band,
    within,
    words,
    chance,
  }: {
    layers: SayingText;
    wanted: LabText;
    deltaE: DeltaText;
    band: DeltaText;
    within: DeltaText;
    words: SayingText;
    chance: ShareText;
  }) => `${layers} (Lab ${wanted}): off by ΔE00 ${deltaE}, foreseen to ± ${band}; a print comes within ${within}: ${words} (${chance})`,
  wantedOpen: ({ layers, wanted }: { layers: SayingText; wanted: LabText }) =>
    `${layers} (Lab ${wanted}): one of its layers is open or left out`,
  lampOverPicture: 'What this sheet carries is known from its picture: how that changes under a lamp is a guess.',
  parting: 'Alike under one lamp, not under another:',
  nothingWorth: 'Nothing foreseen is left to read.',
  outsideScreen: '* more vivid than a screen can show; shown as near as it can.',

  // cut
  stencilHolds: ({ layer, run, side, neck }: { layer: NameText; run: number; side: SayingText; neck: LengthText }) =>
    `${layer}: run ${run}, ${side}; proven to hold, no neck under ${neck}`,
  keptFree: ({ n, area, at }: { n: number; area: AreaText; at: ListText }) =>
    `drawn, but kept free of ink so that it holds: ${many(n, 'place', 'places')}, ${area} in all; ${n > 3 ? 'most seen at' : 'at'} ${at}`,
  printsMore: ({ n, area, at }: { n: number; area: AreaText; at: ListText }) =>
    `not drawn, but prints so that it can be cut: ${many(n, 'place', 'places')}, ${area} in all; ${n > 3 ? 'most seen at' : 'at'} ${at}`,
  stencilFalls: ({ layer, run, side, n }: { layer: NameText; run: number; side: SayingText; n: number }) =>
    `${layer}: run ${run}, ${side}; does NOT hold, ${many(n, 'fault', 'faults')}`,
  window: 'window',
  piece: 'piece',
  knifeWork: ({
    along,
    corners,
    pieces: n,
    time,
    how,
  }: {
    along: SayingText;
    corners: number;
    pieces: number;
    time: TimeText;
    how: SayingText;
  }) => `${along}, ${many(corners, 'corner', 'corners')}, ${pieces(n)}, about ${time}: ${how}`,
  easy: 'easy',
  steady: 'steady',
  fine: 'fine',
  trying: 'trying',
  hopeless: 'hopeless by hand',
  paceOwn: ({ along, corner, piece }: { along: SayingText; corner: NumberText; piece: NumberText }) =>
    `(${along} a minute, ${corner} s a corner, ${piece} s a piece: the pace of this studio)`,
  paceUsual: ({ along, corner, piece }: { along: SayingText; corner: NumberText; piece: NumberText }) =>
    `(${along} a minute, ${corner} s a corner, ${piece} s a piece: a usual pace; the job takes your own under “knife”)`,
  cutTimes: ({ cut, n, why }: { cut: NameText; n: number; why: SayingText }) =>
    `cut “${cut}” ${n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`}. ${why}`,
  bridgeAt: ({ id, at, cost }: { id: NameText; at: LengthText; cost: SayingText }) => `bridge ${id} at ${at}: ${cost}`,
  bridgePinned: ({ id, at, cost }: { id: NameText; at: LengthText; cost: SayingText }) => `bridge ${id} at ${at}: ${cost}, pinned`,
  seenOnArea: ({ area, deltaE }: { area: AreaText; deltaE: DeltaText }) => `${area}, seen as ΔE00 ${deltaE}`,
  islandDropped: ({ at, cost }: { at: LengthText; cost: SayingText }) => `island at ${at} given up: prints ${cost}`,
  islandBridged: ({ at, cost }: { at: LengthText; cost: SayingText }) => `island at ${at} held by bridges; given up it would print ${cost}`,
  loosePiece: ({ n, at, cost }: { n: number; at: LengthText; cost: SayingText }) =>
    `loose piece ${n} at ${at}; left out it would print ${cost}`,
  moreIslands: ({ n }: { n: number }) => `and ${n} more (all with --json)`,
  allIslands: ({ cost }: { cost: SayingText }) => `all islands together: ${cost}`,
  allIslandsAndBridges: ({ islands, bridges: by }: { islands: SayingText; bridges: SayingText }) =>
    `all islands together: ${islands}; all bridges: ${by}`,
  stockSheet: ({
    n,
    material,
    size,
    stencils,
    left,
  }: {
    n: number;
    material: NameText;
    size: LengthText;
    stencils: number;
    left: ShareText;
  }) => `Sheet ${n} of ${material}, ${size}: ${many(stencils, 'stencil', 'stencils')}, ${left} left over`,
  stockSheetTimes: ({ sheet, n }: { sheet: SayingText; n: number }) => `${sheet}; cut ${n} like it`,
  onStock: ({ n, runs }: { n: number; runs: ListText }) => `${n}: ${runs}`,
  onStockTurned: ({ n, runs }: { n: number; runs: ListText }) => `${n}: ${runs}; turned, its top to the right`,

  // press: heads of its lines, then the lines
  mesh: 'Mesh',
  film: 'Film',
  fit: 'Fit',
  squeegee: 'Squeegee',
  gap: 'Gap',
  growth: 'Growth',
  risers: 'Risers',
  register: 'Register',
  meshPerCm: ({
    perCm,
    perInch,
    thread,
    opening,
    open,
  }: {
    perCm: NumberText;
    perInch: NumberText;
    thread: FilmText;
    opening: FilmText;
    open: ShareText;
  }) => `${perCm} threads a cm (${perInch} an inch), thread ${thread}, opening ${opening}, ${open} open`,
  meshPerInch: ({ perInch, thread, opening, open }: { perInch: NumberText; thread: FilmText; opening: FilmText; open: ShareText }) =>
    `${perInch} threads an inch, thread ${thread}, opening ${opening}, ${open} open`,
  usualMesh: ({ mesh }: { mesh: SayingText }) => `${mesh} (a usual one: the job has no screen yet)`,
  filmIs: ({ wet, low, high, dry }: { wet: FilmText; low: FilmText; high: FilmText; dry: FilmText }) =>
    `${wet} wet (${low} to ${high}), ${dry} dry`,
  fitHolds: ({ margins }: { margins: ListText }) => `there is room; ${margins}`,
  fitTight: ({ margins }: { margins: ListText }) => `tight, with care; ${margins}`,
  fitNo: ({ margins }: { margins: ListText }) => `does not fit; ${margins}`,
  margin: ({ side, room }: { side: SayingText; room: LengthText }) => `${side} ${room}`,
  marginShort: ({ side, room, missing }: { side: SayingText; room: LengthText; missing: LengthText }) =>
    `${side} ${room} (${missing} short)`,
  top: 'top',
  bottom: 'bottom',
  left: 'left',
  right: 'right',
  squeegeeIs: ({ range, best }: { range: LengthText; best: LengthText }) => `${range}, best ${best}`,
  gapIs: ({ gap, why }: { gap: LengthText; why: SayingText }) => `${gap}. ${why}`,
  growthIs: ({ along, across }: { along: LengthText; across: LengthText }) =>
    `along the stroke ${along}, across ${across}; the same for all layers as long as screen, place and gap stay`,
  runMesh: ({ run, mesh, film }: { run: SayingText; mesh: NameText; film: FilmText }) => `${run}: mesh ${mesh}, wet film about ${film}`,
  runGap: ({ run, gap, more }: { run: SayingText; gap: LengthText; more?: ListText }) =>
    `${run}: gap ${gap}${more === undefined ? '' : `, ${more}`}`,
  runGrows: ({ along, across }: { along: LengthText; across: LengthText }) => `grows ${along} along, ${across} across`,
  runRisers: ({ height, front }: { height: LengthText; front: LengthText }) => `mesh ${height} above the board, front ${front}`,
  risersAre: ({ height, front, more }: { height: LengthText; front: LengthText; more?: ListText }) =>
    `mesh ${height} above the board; front ${front}${more === undefined ? '' : `, ${more}`}`,
  underHinge: ({ by }: { by: LengthText }) => `${by} under the hinge`,
  underPaper: ({ by }: { by: LengthText }) => `${by} of board under the paper`,
  boards: ({ n, one, total, card }: { n: number; one: LengthText; total: LengthText; card?: LengthText }) =>
    `${n} × ${one} board${card === undefined ? '' : ` and ${card} of card`}: ${total}`,
  tested: ({ sigma }: { sigma: LengthText }) => `test sheets in the job: σ ${sigma}`,
  testedNotUsed: ({ sigma }: { sigma: LengthText }) =>
    `test sheets in the job: σ ${sigma}, not used for the plan (“laydown register” writes a job that uses them)`,
  sheetsWithin: ({ half, most }: { half: LengthText; most: LengthText }) =>
    `half of the sheets within ${half}, nineteen in twenty within ${most} at the worst corner`,
  pair: ({ first, second }: { first: NameText; second: NameText }) => `${first} and ${second}`,
  pairLikely: ({ likely, worst }: { likely: LengthText; worst: LengthText }) => `likely within ${likely}, worst ${worst}`,
  pairForgives: ({ forgives, verdict }: { forgives: LengthText; verdict: SayingText }) => `the drawing forgives ${forgives}: ${verdict}`,
  holds: 'holds',
  tight: 'tight',
  opens: 'opens',
  unknown: 'not known',

  // register
  sheetsRead: ({ n }: { n: number }) => `${many(n, 'sheet', 'sheets')} read`,
  spread: 'Spread',
  turn: 'Turn',
  drift: 'Drift',
  spreadIs: ({ across, down, both, range }: { across: LengthText; down: LengthText; both: LengthText; range: LengthText }) =>
    `σ ${across} across, ${down} down; together ${both}, the true one ${range} (nineteen times in twenty)`,
  turnIs: ({ sigma }: { sigma: NumberText }) => `σ ${sigma}°`,
  turnUnknown: 'not known: read at least two places of each sheet',
  toLeft: ({ by }: { by: LengthText }) => `${by} left`,
  toRight: ({ by }: { by: LengthText }) => `${by} right`,
  up: ({ by }: { by: LengthText }) => `${by} up`,
  down: ({ by }: { by: LengthText }) => `${by} down`,
  clockwise: ({ by }: { by: NumberText }) => `${by}° clockwise`,
  anticlockwise: ({ by }: { by: NumberText }) => `${by}° anticlockwise`,
  plannedWithRegister: ({ file }: { file: NameText }) => `Written: ${file}; it is planned with this register.`,

  // day
  day: ({ n }: { n: number }) => `Day ${n}`,
  hours: ({ from, to }: { from: NameText; to: NameText }) => `${from}–${to}`,
  hand: ({ n }: { n: number }) => `hand ${n}`,
  stepOfRun: ({ run, what }: { run: SayingText; what: SayingText }) => `${run}: ${what}`,
  dayAlone: ({ days, work, wait }: { days: number; work: TimeText; wait: TimeText }) =>
    `${many(days, 'day', 'days')}: ${work} of work, ${wait} of waiting.`,
  dayTogether: ({ days, work, hands, wait }: { days: number; work: TimeText; hands: number; wait: TimeText }) =>
    `${many(days, 'day', 'days')}: ${work} of work for ${hands} together, ${wait} of waiting.`,
  dayRack: ({ peak, dry }: { peak: number; dry: TimeText }) => `At most ${many(peak, 'sheet', 'sheets')} on the rack; ink dries in ${dry}.`,

  // edition
  start: ({
    paper,
    start,
    wanted,
    edition,
    proofs,
  }: {
    paper: SayingText;
    start: number;
    wanted: number;
    edition: number;
    proofs: number;
  }) =>
    `${paper}: start with ${many(start, 'sheet', 'sheets')} for ${wanted} good ones (${edition} numbered, ${many(proofs, 'proof', 'proofs')}).`,
  enough: ({ inHundred, low, high }: { inHundred: number; low: number; high: number }) =>
    `Enough in ${inHundred} of 100 cases; ${low} to ${high} good ones are likely.`,
  keptApart: ({ paper }: { paper: NameText }) => `${paper} (kept apart)`,
  setUp: ({ what }: { what: SayingText }) => `Set-up: ${what}`,
  runNo: ({ run }: { run: number }) => `run ${run}`,
  onAverage: ({ n }: { n: NumberText }) => `${n} sheets on average`,
  beReady: ({ n }: { n: number }) => `be ready for ${n}`,
  spare: 'spare',
  setUpSheet: 'set-up sheet',
  notSigned: 'not signed',
};
