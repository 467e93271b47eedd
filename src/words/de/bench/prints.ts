import type { Words } from '../../en/bench/index.ts';

/** Die eigenen Drucke: die Wand, an der sie hängen. */
export const prints: Words['prints'] = {
  title: 'Meine Drucke',
  titleOf: (n) => (n === 0 ? 'Meine Drucke' : `Meine Drucke (${n})`),
  none: 'Hier hängt noch nichts. Ein Druck kommt von selbst an die Wand, sobald er der eigene ist: hier begonnen, aus einer Datei geöffnet oder ein Beispiel, an dem etwas geändert wurde.',
  stage: { planned: 'geplant', cut: 'geschnitten', printing: 'im Druck', signed: 'signiert' },
  onBench: 'auf der Werkbank',
  backToBench: 'Zurück zur Werkbank',
  open: (title) => `„${title}“ öffnen`,
  copy: 'Kopieren',
  copyOf: (title) => `„${title}“ kopieren: derselbe Druck, noch nichts davon getan`,
  copied: (title) => `„${title}“ hängt an der Wand.`,
  copyTitle: (title) => `${title}, noch einmal`,
  next: 'Neu beginnen',
  nextOf: (title) => `Neu beginnen: ein neuer Druck mit Farben, Papieren und Presse von „${title}“`,
  nextTitle: (title) => `Nach ${title}`,
  putAway: 'Weglegen',
  putAwayOf: (title) => `„${title}“ weglegen`,
  gone: (title) => `„${title}“ ist weggelegt und liegt noch da, unter den anderen.`,
  away: (n) => `${n} weggelegt`,
  takeOut: (title) => `„${title}“ wieder aufhängen`,
  throwAway: (title) => `„${title}“ wegwerfen`,
  throwSure: (title) => `„${title}“ mit allen Fassungen endgültig wegwerfen`,
  thrown: (title) => `„${title}“ ist weggeworfen.`,
  newPrint: 'Neuer Druck',
  exportAll: 'Alle in eine Datei sichern',
  exported: (n, file) =>
    `${n === 1 ? '1 Druck' : `${n} Drucke`} in ${file} gesichert. Hier oder auf einem anderen Gerät geöffnet, sind sie alle wieder da.`,
  imported: (n, known) =>
    `${n === 1 ? '1 Druck hängt' : `${n} Drucke hängen`} an der Wand${known > 0 ? `; ${known} hingen schon dort` : ''}.`,
  hereNowBoth: (title) => `Dieser Tab ist jetzt die Werkbank. Was im anderen lag, ist bei den Drucken: „${title}“.`,
};
