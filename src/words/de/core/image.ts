import type { en } from '../../en/index.ts';
import type { Same } from '../../text.ts';

/** Bilder, die gelesen werden. */
export const image: Same<typeof en.image> = {
  fileEmpty: 'Die Datei ist leer.',
  chooseAnother: 'Eine andere Datei wählen oder diese neu von dort holen, wo sie herkam.',
  notPicture: 'Das ist kein Bild, das Laydown lesen kann.',
  formatsRead: 'Als JPEG, PNG, WebP oder TIFF sichern und diese Datei wählen.',
  sizeMissing: ({ format }) => `Die ${format}-Datei ist beschädigt: sie nennt keine Größe.`,
  cutShort: ({ format }) => `Die ${format}-Datei ist beschädigt oder abgeschnitten.`,
  resave: 'In einem Bildprogramm öffnen und neu sichern.',
  tooManyPixels: ({ megapixels, most }) => `Das Bild hat ${megapixels} Megapixel; Laydown liest bis zu ${most}.`,
  scaleDown: 'Es erst verkleinern: 10 Megapixel sind mehr, als eine von Hand geschnittene Schablone zeigen kann.',
  seeThrough: 'Teile des Bildes sind durchsichtig; sie bleiben blankes Papier.',
  fillFirst: 'Sie erst füllen, falls dort etwas drucken soll.',
  cmyk: 'Das Bild liegt in Druckfarben vor (CMYK), für eine andere Presse und ihre Farben.',
  saveAsRgb: 'Als RGB sichern, mit seinem Farbprofil, und diese Datei wählen.',
  jpegKind: 'Laydown liest JPEG in Grau oder RGB mit acht Bit je Farbe; das hier ist eine andere Art.',
  animated: 'Die WebP-Datei enthält ein bewegtes Bild, kein einzelnes.',
  animatedFirst: 'Die Datei enthält ein bewegtes Bild; nur das erste daraus wird gelesen.',
  saveOnePicture: 'Das Bild, das gedruckt werden soll, als eigene Datei sichern.',
  tooLong: 'Das Bild zu lesen hat länger gedauert, als ein Bild es darf; es wurde abgebrochen.',
  tooMuchMemory: 'Das Bild braucht mehr Speicher, als dieser Rechner dafür hergibt.',
  tiffWithoutImage: 'Die TIFF-Datei ist beschädigt oder enthält kein Bild.',
  tiffKind: 'Laydown liest TIFF in Grau, in RGB oder mit Palette; das hier ist eine andere Art.',
  tiffPacking: 'Die TIFF-Datei ist beschädigt oder auf eine Weise gepackt, die sich nicht lesen lässt.',
  saveUnpacked: 'Ohne Kompression oder als PNG neu sichern.',
  readerNotLoaded: ({ format }) => `Der Teil von Laydown, der ${format}-Dateien liest, ist nicht geladen.`,
  loadAgain: 'Die Seite neu laden. Hilft das nicht, das Bild als PNG sichern.',
  // Farbprofile; auf jedes folgt `takenAsSrgb`.
  profilesNotLoaded: 'Der Teil von Laydown, der Farbprofile liest, ist nicht geladen.',
  profileDamaged: 'Das Farbprofil im Bild ist beschädigt.',
  profileNotRgb: ({ space }) => `Das Farbprofil im Bild ist für ${space}-Farben, nicht für RGB.`,
  profileUnknown: 'Das Farbprofil im Bild ist für eine unbekannte Art von Farben, nicht für RGB.',
  profileUseless: 'Das Farbprofil im Bild ist nicht brauchbar.',
  takenAsSrgb: 'Die Farben gelten als sRGB.',
  convertToSrgb: 'Falls sie falsch aussehen, das Bild in sRGB umwandeln und diese Datei wählen.',
};
