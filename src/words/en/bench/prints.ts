import type { PrintStage } from '../../../core/asks/index.ts';

/** One's prints: the wall that they hang on. */
export const prints = {
  title: 'My prints',
  titleOf: (n: number) => (n === 0 ? 'My prints' : `My prints (${n})`),
  none: 'Nothing hangs here yet. A print comes to the wall by itself as soon as it is yours: begun here, opened from a file, or an example that you changed.',
  stage: { planned: 'planned', cut: 'cut', printing: 'printing', signed: 'signed' } satisfies Record<PrintStage, string>,
  onBench: 'on the bench',
  backToBench: 'Back to the bench',
  open: (title: string) => `Open “${title}”`,
  copy: 'Copy',
  copyOf: (title: string) => `Copy “${title}”: the same print, nothing of it done yet`,
  copied: (title: string) => `“${title}” hangs on the wall.`,
  copyTitle: (title: string) => `${title}, another`,
  next: 'Start anew',
  nextOf: (title: string) => `Start a new print with the inks, papers and press of “${title}”`,
  nextTitle: (title: string) => `After ${title}`,
  putAway: 'Put away',
  putAwayOf: (title: string) => `Put “${title}” away`,
  gone: (title: string) => `“${title}” is put away. It is still here, below the others.`,
  away: (n: number) => (n === 1 ? '1 put away' : `${n} put away`),
  takeOut: (title: string) => `Hang “${title}” up again`,
  throwAway: (title: string) => `Throw “${title}” away`,
  throwSure: (title: string) => `Throw “${title}” and its versions away for good`,
  thrown: (title: string) => `“${title}” is thrown away.`,
  newPrint: 'New print',
  exportAll: 'Export all in one file',
  exported: (n: number, file: string) =>
    `${n === 1 ? '1 print' : `${n} prints`} saved in ${file}. Open it here, or on another machine, to have them all again.`,
  imported: (n: number, known: number) =>
    `${n === 1 ? '1 print hangs' : `${n} prints hang`} on the wall${known > 0 ? `; ${known} hung there already` : ''}.`,
  hereNowBoth: (title: string) => `This tab is the bench now. What the other one held is among your prints: “${title}”.`,
};
