import { describe, expect, test } from 'vitest';
import { coreTexts } from '../../../../test/core-texts.ts';
import { coreInGerman } from './de/index.ts';
import { joined } from './de/joined.ts';
import { bare, phrasebook } from './phrasebook.ts';

const german = phrasebook(coreInGerman, ',');
const keys = new Set(Object.keys(coreInGerman).map(bare));

describe('core’s sentences in German', () => {
  test('every text in core’s sources that can come before a reader has its German', () => {
    const texts = coreTexts();
    expect(texts.length).toBeGreaterThan(700);
    expect(texts.filter((t) => !keys.has(t.template)).map((t) => `${t.at}  ${t.template}`)).toEqual([]);
  });

  test('no German stands there for a sentence that core no longer says', () => {
    const said = new Set(coreTexts().map((t) => t.template));
    const woven = new Set(Object.keys(joined).map(bare));
    expect([...keys].filter((k) => !said.has(k) && !woven.has(k))).toEqual([]);
  });

  test('no value is lost or invented on the way', () => {
    const names = (text: string): string[] => [...text.matchAll(/\{(\w+)[*#]?\}/g)].map((m) => m[1]).sort();
    const wrong = Object.entries(coreInGerman).filter(([key, answer]) => names(answer).some((n) => !names(key).includes(n)));
    expect(wrong).toEqual([]);
  });

  test.each([
    [
      'Run 2 (Kelp and sand): A gap of 9.5 mm stretches the mesh by 0.62 %: the edges of the image drift outwards and the mesh slackens in time.',
      'Lauf 2 (Kelp and sand): 9,5 mm Absprung dehnen das Gewebe um 0,62 %: die Ränder des Bildes wandern nach außen, und das Gewebe wird mit der Zeit schlaff.',
    ],
    [
      'Pull 3 on newsprint, then all 40 sheets. 12 min of it are pauses, with the screen flooded.',
      '3 auf Zeitungspapier, dann alle 40 Bogen drucken. Davon sind 12 min Pausen, mit geflutetem Sieb.',
    ],
    [
      'A print up to A3 by hand, tension not known. Enough when the mesh snaps up behind the blade.',
      'Ein Druck bis A3 von Hand, Spannung nicht bekannt. Genug, wenn das Gewebe hinter der Rakel hochschnellt.',
    ],
    ['12 numbered, 2 A/P, 1 B.A.T., 2 state proofs', '12 nummeriert, 2 A/P, 1 B.A.T., 2 Zustandsdrucke'],
    ['2 proofs are to be held back from 1 sheet of Smooth white.', '2 Probedrucke sind von 1 Bogen Smooth white zurückzulegen.'],
    [
      'Window in Polyester film; Shell pink, 45 % Shell pink, 55 % Clear base; amount on the mixing card. 3 on newsprint first, then every sheet in the same order. Look for: Stop. Look at it! Dry for 30 min.',
      'Fenster, Polyesterfolie; Shell pink, 45 % Shell pink, 55 % Clear base; Menge auf der Mischkarte. Zuerst 3 auf Zeitungspapier, dann jeden Bogen in derselben Folge. Achten auf: Stop. Look at it! 30 min trocknen lassen.',
    ],
    [
      'Put the image in the middle of the frame. Then 12.5 mm are missing instead of 31 mm.',
      'Das Bild in die Mitte des Rahmens setzen. Dann fehlen 12,5 mm statt 31 mm.',
    ],
    [
      'The second run lies 0.21 mm to the right and 0.10 mm down on every sheet: lay stencil or screen back by as much before a run; chance is not to blame.',
      'Der zweite Lauf liegt auf jedem Bogen 0,21 mm nach rechts und 0,10 mm nach unten: Schablone oder Sieb vor einem Lauf um ebenso viel zurücksetzen; Zufall ist nicht schuld.',
    ],
    [
      'Tide pool, by Ann Printer, 2026. Screenprint in six runs from cut stencils, with transparent water-based inks, on Smooth white and Warm fibre. Image 180 × 240 mm. The edition is 12 numbered. Printed by Ann at Kitchen table, 2026.',
      'Tide pool, von Ann Printer, 2026. Siebdruck, sechs Läufe, von geschnittenen Schablonen, mit transparenten Farben auf Wasserbasis, auf Smooth white und Warm fibre. Bild 180 × 240 mm. Die Auflage: 12 nummeriert. Gedruckt von Ann in der Werkstatt Kitchen table, 2026.',
    ],
    ['“strength” must be at most 1.', '„strength“ muss höchstens 1 sein.'],
    [
      'One place of paper was too thin for polyester film and made broader (first at 31, 40 mm).',
      'Eine Stelle im Papier wurde breiter gemacht: zu dünn für Polyesterfolie (zuerst bei 31, 40 mm).',
    ],
    ['kelp.svg line 12', 'kelp.svg Zeile 12'],
  ])('%s', (english, wanted) => expect(german(english)).toBe(wanted));

  test('what a printmaker wrote stays as it was written', () => {
    for (const own of ['Kelp 2.5', 'Sand and sea, no. 3', 'Sonne über dem Watt. Ganz leicht!', 'A note of my own; keep the window open.'])
      expect(german(own)).toBe(own);
  });

  test('a text of a thousand clauses is answered at once', () => {
    const long = 'Wet, and so on; '.repeat(1000);
    expect(german(long)).toBe(long);
  });
});
