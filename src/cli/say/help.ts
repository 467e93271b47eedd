import { asWritten, languages, list, listed, name as asName, say, type Saying } from '../../words/index.ts';
import type { Command, HelpPart, HelpRow } from '../command.ts';
import { sayHere, tellHere } from '../reader.ts';
import { filled, widthOf, wrapped } from './table.ts';

/** What stands in help for something that is typed, by its key. */
type Blank =
  | 'job'
  | 'job2'
  | 'layer'
  | 'layers'
  | 'file'
  | 'csvFile'
  | 'folder'
  | 'paper'
  | 'inks'
  | 'name'
  | 'step'
  | 'percent'
  | 'grams'
  | 'amounts'
  | 'reading'
  | 'lot'
  | 'words'
  | 'wishes'
  | 'photo'
  | 'picture'
  | 'parts'
  | 'size'
  | 'mark'
  | 'layerInk'
  | 'material'
  | 'way'
  | 'lamp';

const blankOf = (blank: Blank): Saying => say(`help.${blank}` as const);

/** `--out FILE   the drawing to write`; what is typed as it stands belongs to `typed`: `--keep N`. */
export function option(typed: string, does: Saying, blank?: Blank): HelpRow {
  return { option: typed.split(' ')[0], typed: blank ? listed([asName(typed), blankOf(blank)], 'sentences') : asWritten(typed), does };
}

/** `LAYER   its id, its name, or its run`. */
export function word(blank: Blank, does: Saying): HelpRow {
  return { typed: blankOf(blank), does };
}

/** A row for something that is typed as it stands. */
export function exactly(typed: string, does: Saying): HelpRow {
  return { typed: asWritten(typed), does };
}

export const json: HelpRow = option('--json', say('help.asJson'));
export const replaceFile: HelpRow = option('--replace', say('help.replaceFile'));

/** The option that every command has. `prints`: it makes something on paper as well. */
function languageRow(prints: boolean): HelpRow {
  const all = list(
    languages.map(({ id, name }) => asName(`${id} (${name})`)),
    'or',
  );
  return {
    option: '--lang',
    typed: listed([asName('--lang'), say('help.language')], 'sentences'),
    does: prints ? say('help.langPrinted', { languages: all }) : say('help.lang', { languages: all }),
  };
}

/** A terminal's width within what is read with ease; the same on all that are no terminal. */
const usualWidth = 100;
const widthHere = (): number => Math.max(50, Math.min(usualWidth, process.stdout.columns ?? usualWidth));
/** What is typed takes no more than this beside what it does; longer, it stands above. */
const mostTyped = 22;

/** Paragraphs and headings as they come; rows with what they do in a column of its own, broken to the terminal's width. */
function told(parts: readonly HelpPart[]): string[] {
  const typed = parts.map((part) => ('typed' in part ? tellHere(part.typed) : ''));
  const left = Math.max(0, ...typed.map(widthOf).filter((width) => width <= mostTyped));
  return parts.flatMap((part, i) => {
    if ('heading' in part) return ['', tellHere(part.heading)];
    if (!('typed' in part)) return wrapped(tellHere(part), widthHere());
    const does = wrapped(tellHere(part.does), widthHere() - left - 4);
    const rows =
      widthOf(typed[i]) <= left
        ? does.map((line, k) => [k === 0 ? typed[i] : '', line])
        : [[typed[i], ''], ...does.map((line) => ['', line])];
    return rows.map(([one, other]) => `  ${filled(one, left)}  ${other}`.trimEnd());
  });
}

/** `laydown packet JOB [--out FOLDER]`, on as many lines as it takes. */
export function usageOf(command: Command): string {
  const [first, ...more] = wrapped(sayHere('help.callOf', { usage: command.usage }), widthHere() - 4);
  return [first, ...more.map((line) => `    ${line}`)].join('\n');
}

/** All that `laydown NAME --help` says. */
export function sayHelp(command: Command): string {
  return [
    usageOf(command),
    '',
    ...wrapped(sayHere('help.sentence', { text: command.summary }), widthHere()),
    '',
    ...told([...command.help, languageRow(command.prints === true)]),
  ].join('\n');
}

/** All that `laydown --help` says. */
export function sayCommands(commands: readonly Command[]): string {
  return [
    sayHere('help.intro'),
    '',
    sayHere('help.call'),
    '',
    ...told(commands.map(({ name, summary }) => ({ typed: asWritten(name), does: summary }))),
    '',
    ...told([languageRow(false)]),
    '',
    ...wrapped(sayHere('help.jobIs'), widthHere()),
    sayHere('help.more'),
  ].join('\n');
}
