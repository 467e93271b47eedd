import type { Words } from '../../en/bench/index.ts';

/** Die Zählseite, die ein Telefon an der Presse zeigt, und der Schreibtisch, der seine Zählung teilt. */
export const away: Words['away'] = {
  title: 'An der Presse zählen',
  code: 'Code vom Schreibtisch',
  enter: 'Einlassen',
  wrong: 'Dieser Code öffnet nicht. Jeder lässt ein einziges Gerät ein: auf dem Schreibtisch steht der neueste.',
  waiting: 'Warten auf die Läufe vom Schreibtisch …',
  handedOver: 'Der Schreibtisch hat jedes Tippen.',
  toHandOver: (n) => (n === 1 ? '1 Tippen ist erst auf diesem Gerät.' : `${n} Tippen sind erst auf diesem Gerät.`),
  notPrivate: 'Nicht vertraulich: Läufe, Bögen und Zählung gehen unverschlüsselt über dieses Netz.',
  keepOn: 'Das Gerät so einstellen, dass der Bildschirm an bleibt.',
  notKept: 'Dieser Browser bewahrt nichts auf: ein Tippen geht verloren, wenn die Seite geht, bevor der Schreibtisch es hat.',
  shareTitle: 'Auch am Telefon zählen',
  shareText: (address, code) => `Das Quadrat mit dem Telefon lesen oder dort ${address} öffnen und ${code} eintippen.`,
  shareQr: 'Quadratischer Code mit der Adresse der Zählseite',
  devices: (n) =>
    n === 0 ? 'Noch zählt kein anderes Gerät.' : n === 1 ? '1 anderes Gerät ist eingelassen.' : `${n} andere Geräte sind eingelassen.`,
  gone: 'Die Zählung wird nicht mehr geteilt: das Programm dafür ist beendet. Jedes Tippen bleibt, wo es gemacht wurde.',
  guard: 'Zweimal kurz tippen zählt einmal',
};
