import { ProblemError, problem, type Problem } from '../core/problem.ts';
import { cleanNote } from '../core/plain-text.ts';
import { name as asName, say } from '../words/index.ts';
import { again } from './commands/ink/again.ts';
import { check } from './commands/job/check.ts';
import { explain } from './commands/job/explain.ts';
import { eye } from './commands/ink/eye.ts';
import { begin } from './commands/job/new.ts';
import type { Command } from './command.ts';
import { cut } from './commands/make/cut.ts';
import { day } from './commands/make/day.ts';
import { done } from './commands/job/done.ts';
import { drawdowns } from './commands/ink/drawdowns.ts';
import { edition } from './commands/make/edition.ts';
import { form } from './commands/job/form.ts';
import { forecast } from './commands/ink/forecast.ts';
import { sayCommands, sayHelp, usageOf } from './say/help.ts';
import { lens } from './commands/job/lens.ts';
import { lines } from './commands/picture/lines.ts';
import { mix } from './commands/ink/mix.ts';
import { languageProblem, readCall, takeLanguage } from './options.ts';
import { order } from './commands/ink/order.ts';
import { packet } from './commands/make/packet.ts';
import { photo } from './commands/job/photo.ts';
import { positive } from './commands/picture/positive.ts';
import { pot } from './commands/ink/pot.ts';
import { press } from './commands/make/press.ts';
import { problemHere, sayHere, speak } from './reader.ts';
import { readings } from './commands/ink/readings.ts';
import { recipe } from './commands/ink/recipe.ts';
import { register } from './commands/make/register.ts';
import { separate } from './commands/picture/separate.ts';
import { serve } from './commands/make/serve.ts';
import { shelf } from './commands/ink/shelf.ts';
import { spread } from './commands/ink/spread.ts';
import { split } from './commands/picture/split.ts';
import { trace } from './commands/job/trace.ts';
import { wedge } from './commands/picture/wedge.ts';

export const commands: readonly Command[] = [
  begin,
  explain,
  check,
  forecast,
  packet,
  done,
  cut,
  order,
  spread,
  recipe,
  mix,
  pot,
  press,
  register,
  day,
  edition,
  again,
  readings,
  photo,
  eye,
  drawdowns,
  shelf,
  trace,
  lens,
  form,
  separate,
  split,
  wedge,
  positive,
  lines,
  serve,
];

/** Names stand in what is printed; a terminal must not obey what stands in a name. */
export function printPlainly(): void {
  for (const way of ['log', 'error'] as const) {
    const print = console[way].bind(console);
    console[way] = (...texts: unknown[]) => print(...texts.map((text) => (typeof text === 'string' ? cleanNote(text) : text)));
  }
}

/** One call of `laydown`, spoken in the language asked for or set in the environment. Returns the exit code: 2 where the call itself can't be understood. */
export async function laydown(args: readonly string[], environment: NodeJS.ProcessEnv): Promise<number> {
  const { asked, rest } = takeLanguage(args);
  const noLanguage = languageProblem(asked);
  speak(noLanguage ? undefined : asked, environment);
  if (noLanguage) return refuse([noLanguage]);
  const [name, ...more] = rest;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    console.log(sayCommands(commands));
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((c) => c.name === name);
  if (!command) {
    const all = say('cli.seeCommands');
    return refuse([
      problem('error', 'no-such-command', say('where.commandLine'), say('cli.noSuchCommand', { command: asName(name) }), all),
    ]);
  }
  const { call, problems } = readCall(command, more);
  if (!call) return refuse(problems, command);
  if (call.options['help']) {
    console.log(sayHelp(command));
    return 0;
  }
  try {
    return await command.run({ ...call, language: asked });
  } catch (error) {
    if (error instanceof ProblemError) for (const p of error.problems) console.error(problemHere(p));
    else console.error(`${sayHere('cli.unforeseen')}\n`, error);
    return 1;
  }
}

/** What is wrong with a call, and how it is made rightly. */
function refuse(problems: readonly Problem[], command?: Command): number {
  for (const p of problems) console.error(problemHere(p));
  if (command) console.error(`\n${usageOf(command)}\n${sayHere('help.moreOf', { command: asName(command.name) })}`);
  return 2;
}
