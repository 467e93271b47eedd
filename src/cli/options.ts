import { parseArgs } from 'node:util';
import { problem, type Problem } from '../core/problem.ts';
import { languages, list, name as asName, say, type Saying } from '../words/index.ts';
import type { Call, Command, HelpRow } from './command.ts';

/** `--lang de` may stand before or after the command's name. What is asked, and the arguments without it. */
export function takeLanguage(args: readonly string[]): { readonly asked?: string; readonly rest: readonly string[] } {
  const end = args.indexOf('--') < 0 ? args.length : args.indexOf('--');
  const at = args.findIndex((arg, i) => i < end && /^--lang(=|$)/.test(arg));
  if (at < 0) return { rest: args };
  const joined = args[at].startsWith('--lang=');
  const asked = joined ? args[at].slice('--lang='.length) : at + 1 < end ? args[at + 1] : '';
  return { asked, rest: [...args.slice(0, at), ...args.slice(at + (joined ? 1 : 2))] };
}

/** What is wrong with a language asked for: there is none of that name. */
export function languageProblem(asked: string | undefined): Problem | null {
  if (asked === undefined || languages.some(({ id }) => new RegExp(`^${id}([-_.].*)?$`, 'i').test(asked))) return null;
  return problem(
    'error',
    'no-such-language',
    placeOf('--lang'),
    asked === '' ? say('cli.valueMissing') : say('cli.noSuchLanguage', { language: asName(asked) }),
    say('cli.chooseLanguage', {
      all: list(
        languages.map(({ id, name }) => asName(`${id} (${name})`)),
        'or',
      ),
    }),
  );
}

/** Where a problem is that an option makes. */
export function placeOf(option: string): Saying {
  return say('where.option', { option: asName(option) });
}

/** The words and options of a command, or all that is wrong with how they are written. */
export function readCall(
  command: Command,
  args: readonly string[],
): { readonly call?: Omit<Call, 'language'>; readonly problems: Problem[] } {
  const options = { ...command.options, help: { type: 'boolean', short: 'h' } } as const;
  // Strict, the parser would complain in its own words, and take no value that begins with a minus.
  const { positionals, values, tokens } = parseArgs({ args: [...args], options, strict: false, allowPositionals: true, tokens: true });
  const problems: Problem[] = [];
  const complained = new Set<number>();
  for (const token of tokens) {
    if (token.kind !== 'option' || complained.has(token.index)) continue;
    const known = Object.hasOwn(options, token.name) ? (options as NonNullable<Command['options']>)[token.name] : undefined;
    const add = (code: string, message: Saying, advice: Saying): void => {
      complained.add(token.index);
      problems.push(
        problem('error', code, placeOf(known ? token.rawName : (args[token.index]?.split('=')[0] ?? token.rawName)), message, advice),
      );
    };
    if (!known) {
      const number = /^-[\d.,]/.test(args[token.index]);
      add(
        'no-such-option',
        say('cli.noSuchOption', { command: asName(command.name) }),
        number ? say('cli.quoteMinus') : optionsOf(command),
      );
    } else if (known.type === 'boolean' && token.value !== undefined)
      add('option-takes-no-value', say('cli.takesNoValue'), say('cli.writeAlone', { option: asName(token.rawName) }));
    else if (known.type === 'string' && (token.value === undefined || (!token.inlineValue && /^-(-|[a-z])/i.test(token.value))))
      add('option-needs-value', say('cli.valueMissing'), say('cli.writeAs', { option: typedAs(command, token.rawName) }));
  }
  return problems.length > 0 ? { problems } : { call: { words: positionals, options: values }, problems };
}

function optionsOf(command: Command): Saying {
  const all = Object.keys(command.options ?? {}).map((option) => asName(`--${option}`));
  return say('cli.itTakes', { all: list([...all, asName('--lang'), asName('--help')], 'and') });
}

/** An option as the command's help writes it. */
function typedAs({ help }: Command, option: string): Saying {
  return (
    help.find((part): part is HelpRow => 'option' in part && part.option === option)?.typed ??
    say('cli.optionAndValue', { option: asName(option) })
  );
}
