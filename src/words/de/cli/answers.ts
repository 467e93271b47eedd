import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';
import { many } from '../grammar.ts';

const pieces = (n: number): string => many(n, 'Teil', 'Teile');
const bridges = (n: number): string => many(n, 'Steg', 'Stege');

/** Was Befehle über eine Arbeit antworten, wie sie geschnitten und gedruckt wird. */
export const answers: Same<typeof en.answers> = {
  // Gemeinsames
  metres: ({ metres }) => `${metres} m`,
  run: ({ run, layer }) => `Lauf ${run}, ${layer}`,

  // check
  nothingToMend: 'Nichts zu beheben.',
  toMend: ({ errors, others }) => `${errors} zu beheben, ${others} anzusehen.`,

  jobMark: ({ mark }) => `Arbeit ${mark}`,
  packetOld: ({ was, is }) => `Diese Mappe ist aus dem Stand ${was}; die Arbeit ist jetzt ${is}. Sie passt nicht mehr.`,
  packetAnew: 'Neu machen und die alten Seiten wegwerfen.',

  // packet
  files: ({ folder, n }) => `${folder}: ${many(n, 'Datei', 'Dateien')}`,
  jobIs: ({ title, runs, papers, image }) => `${title}: ${many(runs, 'Lauf', 'Läufe')} auf ${many(papers, 'Papier', 'Papieren')}, ${image}`,
  overlapsOn: ({ n, paper, band }) =>
    `${many(n, 'Überdruck bedeckt', 'Überdrucke bedecken')} Fläche auf ${paper}; vorhergesagt auf höchstens ± ${band} ΔE00`,
  toCutAndMix: ({ along, bridges: n, ink }) => `${along} zu schneiden, ${bridges(n)}; ${ink} Farbe zu mischen`,

  // forecast
  within: ({ band }) => `± ${band}`,
  barePaper: 'blankes Papier',
  bandIs: ({ why }) => `±: ${why}`,
  worthReading: ({ band }) => `Zuerst zu messen (im Mittel jetzt ± ${band}):`,
  worthOne: ({ layers, at, band }) => `${layers}, ${at} von der linken oberen Bildecke: dann ± ${band}`,
  underLamp: ({ paper, lamp }) => `${paper}. ${lamp}`,
  onGround: ({ n, area }) => `Grund ${n} des Bogens, ${area}:`,
  noneWanted: 'Von keinem Überdruck wird ein Farbton gewünscht.',
  wantedHead: 'Gewünschte Farbtöne:',
  wantedNow: ({ layers, wanted, deltaE, band, within, words, chance }) =>
    `${layers} (Lab ${wanted}): um ΔE00 ${deltaE} daneben, auf ± ${band} vorhergesehen; ein Druck kommt auf ${within} heran: ${words} (${chance})`,
  wantedOpen: ({ layers, wanted }) => `${layers} (Lab ${wanted}): eine seiner Schichten ist offen oder ausgelassen`,
  lampOverPicture: 'Was dieser Bogen trägt, ist nur aus dem Bild bekannt: wie es sich unter einer Lampe ändert, ist geschätzt.',
  parting: 'Unter einer Lampe gleich, unter einer anderen nicht:',
  nothingWorth: 'Nichts Vorhergesagtes ist noch zu messen.',
  outsideScreen: '* leuchtender, als ein Bildschirm zeigen kann; gezeigt so nah wie möglich.',

  // cut
  stencilHolds: ({ layer, run, side, neck }) => `${layer}: Lauf ${run}, ${side}; hält nachweislich, keine Engstelle unter ${neck}`,
  keptFree: ({ n, area, at }) =>
    `gezeichnet, aber frei von Farbe, damit es hält: ${many(n, 'Stelle', 'Stellen')}, zusammen ${area}; ${n > 3 ? 'die auffälligsten bei' : 'bei'} ${at}`,
  printsMore: ({ n, area, at }) =>
    `nicht gezeichnet, druckt aber, damit es schneidbar ist: ${many(n, 'Stelle', 'Stellen')}, zusammen ${area}; ${n > 3 ? 'die auffälligsten bei' : 'bei'} ${at}`,
  stencilFalls: ({ layer, run, side, n }) => `${layer}: Lauf ${run}, ${side}; hält NICHT, ${many(n, 'Fehler', 'Fehler')}`,
  window: 'Fenster',
  piece: 'Stück',
  knifeWork: ({ along, corners, pieces: n, time, how }) =>
    `${along}, ${many(corners, 'Ecke', 'Ecken')}, ${pieces(n)}, etwa ${time}: ${how}`,
  easy: 'leicht',
  steady: 'ruhige Hand',
  fine: 'fein',
  trying: 'mühsam',
  hopeless: 'von Hand aussichtslos',
  paceOwn: ({ along, corner, piece }) => `(${along} je Minute, ${corner} s je Ecke, ${piece} s je Teil: das Tempo dieser Werkstatt)`,
  paceUsual: ({ along, corner, piece }) =>
    `(${along} je Minute, ${corner} s je Ecke, ${piece} s je Teil: ein übliches Tempo; das eigene steht in der Arbeit unter „knife“)`,
  cutTimes: ({ cut, n, why }) => `Schnitt „${cut}“: ${n === 1 ? 'einmal' : n === 2 ? 'zweimal' : `${n}-mal`} schneiden. ${why}`,
  bridgeAt: ({ id, at, cost }) => `Steg ${id} bei ${at}: ${cost}`,
  bridgePinned: ({ id, at, cost }) => `Steg ${id} bei ${at}: ${cost}, festgesetzt`,
  seenOnArea: ({ area, deltaE }) => `${area}, zu sehen als ΔE00 ${deltaE}`,
  islandDropped: ({ at, cost }) => `Insel bei ${at} weggelassen: dort druckt ${cost}`,
  islandBridged: ({ at, cost }) => `Insel bei ${at} mit Stegen gehalten; weggelassen würde dort drucken: ${cost}`,
  loosePiece: ({ n, at, cost }) => `loses Teil ${n} bei ${at}; weggelassen würde dort drucken: ${cost}`,
  moreIslands: ({ n }) => `und ${n} weitere (alle mit --json)`,
  allIslands: ({ cost }) => `alle Inseln zusammen: ${cost}`,
  allIslandsAndBridges: ({ islands, bridges: by }) => `alle Inseln zusammen: ${islands}; alle Stege: ${by}`,
  stockSheet: ({ n, material, size, stencils, left }) =>
    `Bogen ${n} ${material}, ${size}: ${many(stencils, 'Schablone', 'Schablonen')}, ${left} Rest`,
  stockSheetTimes: ({ sheet, n }) => `${sheet}; ${n} solche schneiden`,
  onStock: ({ n, runs }) => `${n}: ${runs}`,
  onStockTurned: ({ n, runs }) => `${n}: ${runs}; gedreht, oben liegt rechts`,

  // press: Köpfe der Zeilen, dann die Zeilen
  mesh: 'Gewebe',
  film: 'Farbfilm',
  fit: 'Platz',
  squeegee: 'Rakel',
  gap: 'Absprung',
  growth: 'Wachsen',
  risers: 'Unterlagen',
  register: 'Passer',
  meshPerCm: ({ perCm, perInch, thread, opening, open }) =>
    `${perCm} Fäden je cm (${perInch} je Zoll), Faden ${thread}, Maschenweite ${opening}, ${open} offen`,
  meshPerInch: ({ perInch, thread, opening, open }) => `${perInch} Fäden je Zoll, Faden ${thread}, Maschenweite ${opening}, ${open} offen`,
  usualMesh: ({ mesh }) => `${mesh} (ein übliches: die Arbeit hat noch kein Sieb)`,
  filmIs: ({ wet, low, high, dry }) => `${wet} nass (${low} bis ${high}), ${dry} trocken`,
  fitHolds: ({ margins }) => `es ist Platz; ${margins}`,
  fitTight: ({ margins }) => `eng, mit Vorsicht; ${margins}`,
  fitNo: ({ margins }) => `passt nicht; ${margins}`,
  margin: ({ side, room }) => `${side} ${room}`,
  marginShort: ({ side, room, missing }) => `${side} ${room} (${missing} zu wenig)`,
  top: 'oben',
  bottom: 'unten',
  left: 'links',
  right: 'rechts',
  squeegeeIs: ({ range, best }) => `${range}, am besten ${best}`,
  gapIs: ({ gap, why }) => `${gap}. ${why}`,
  growthIs: ({ along, across }) =>
    `längs des Rakelzugs ${along}, quer ${across}; gleich für alle Schichten, solange Sieb, Platz und Absprung bleiben`,
  runMesh: ({ run, mesh, film }) => `${run}: Gewebe ${mesh}, nasser Film etwa ${film}`,
  runGap: ({ run, gap, more }) => `${run}: Absprung ${gap}${more === undefined ? '' : `, ${more}`}`,
  runGrows: ({ along, across }) => `wächst ${along} längs, ${across} quer`,
  runRisers: ({ height, front }) => `Gewebe ${height} über der Platte, vorn ${front}`,
  risersAre: ({ height, front, more }) => `Gewebe ${height} über der Platte; vorn ${front}${more === undefined ? '' : `, ${more}`}`,
  underHinge: ({ by }) => `${by} unter das Scharnier`,
  underPaper: ({ by }) => `${by} Pappe unter das Papier`,
  boards: ({ n, one, total, card }) => `${n} × ${one} Pappe${card === undefined ? '' : ` und ${card} Karton`}: ${total}`,
  tested: ({ sigma }) => `Testbogen in der Arbeit: σ ${sigma}`,
  testedNotUsed: ({ sigma }) =>
    `Testbogen in der Arbeit: σ ${sigma}, für den Plan nicht genommen („laydown register“ schreibt eine Arbeit, die sie nimmt)`,
  sheetsWithin: ({ half, most }) => `die Hälfte der Bogen auf ${half}, neunzehn von zwanzig auf ${most} an der schlechtesten Ecke`,
  pair: ({ first, second }) => `${first} und ${second}`,
  pairLikely: ({ likely, worst }) => `wahrscheinlich auf ${likely}, schlimmstens ${worst}`,
  pairForgives: ({ forgives, verdict }) => `die Zeichnung verzeiht ${forgives}: ${verdict}`,
  holds: 'hält',
  tight: 'knapp',
  opens: 'blitzt',
  unknown: 'nicht bekannt',

  // register
  sheetsRead: ({ n }) => `${many(n, 'Bogen', 'Bogen')} abgelesen`,
  spread: 'Streuung',
  turn: 'Drehung',
  drift: 'Versatz',
  spreadIs: ({ across, down, both, range }) =>
    `σ ${across} quer, ${down} abwärts; zusammen ${both}, die wahre ${range} (neunzehnmal von zwanzig)`,
  turnIs: ({ sigma }) => `σ ${sigma}°`,
  turnUnknown: 'nicht bekannt: auf jedem Bogen mindestens zwei Stellen ablesen',
  toLeft: ({ by }) => `${by} nach links`,
  toRight: ({ by }) => `${by} nach rechts`,
  up: ({ by }) => `${by} nach oben`,
  down: ({ by }) => `${by} nach unten`,
  clockwise: ({ by }) => `${by}° im Uhrzeigersinn`,
  anticlockwise: ({ by }) => `${by}° gegen den Uhrzeigersinn`,
  plannedWithRegister: ({ file }) => `Geschrieben: ${file}; geplant mit diesem Passer.`,

  // day
  day: ({ n }) => `Tag ${n}`,
  hours: ({ from, to }) => `${from}–${to}`,
  hand: ({ n }) => `Hand ${n}`,
  stepOfRun: ({ run, what }) => `${run}: ${what}`,
  dayAlone: ({ days, work, wait }) => `${many(days, 'Tag', 'Tage')}: ${work} Arbeit, ${wait} Warten.`,
  dayTogether: ({ days, work, hands, wait }) => `${many(days, 'Tag', 'Tage')}: ${work} Arbeit zu ${hands}, ${wait} Warten.`,
  dayRack: ({ peak, dry }) => `Höchstens ${many(peak, 'Bogen', 'Bogen')} im Regal; die Farbe trocknet in ${dry}.`,

  // edition
  start: ({ paper, start, wanted, edition, proofs }) =>
    `${paper}: mit ${many(start, 'Bogen', 'Bogen')} beginnen für ${wanted} gute (${edition} nummeriert, ${many(proofs, 'Probedruck', 'Probedrucke')}).`,
  enough: ({ inHundred, low, high }) => `Reicht in ${inHundred} von 100 Fällen; wahrscheinlich werden ${low} bis ${high} gut.`,
  keptApart: ({ paper }) => `${paper} (für sich gehalten)`,
  setUp: ({ what }) => `Einrichten: ${what}`,
  runNo: ({ run }) => `Lauf ${run}`,
  onAverage: ({ n }) => `im Mittel ${n} Bogen`,
  beReady: ({ n }) => `auf ${n} gefasst sein`,
  spare: 'übrig',
  setUpSheet: 'Einrichtebogen',
  notSigned: 'nicht signiert',
};
