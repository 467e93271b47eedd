#!/usr/bin/env node
import { parseArgs } from 'node:util';
import { ProblemError } from '../core/problem.ts';
import { tellProblem } from '../words/index.ts';
import { again } from './again.ts';
import { check } from './check.ts';
import { cut } from './cut.ts';
import type { Command } from './command.ts';
import { drawdowns } from './drawdowns.ts';
import { day } from './day.ts';
import { edition } from './edition.ts';
import { forecast } from './forecast.ts';
import { mix } from './mix.ts';
import { order } from './order.ts';
import { packet } from './packet.ts';
import { photo } from './photo.ts';
import { pot } from './pot.ts';
import { press } from './press.ts';
import { readings } from './readings.ts';
import { recipe } from './recipe.ts';
import { register } from './register.ts';
import { separate } from './separate.ts';
import { serve } from './serve.ts';
import { shelf } from './shelf.ts';
import { trace } from './trace.ts';

const commands: readonly Command[] = [
  check,
  forecast,
  packet,
  cut,
  order,
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
  drawdowns,
  shelf,
  trace,
  separate,
  serve,
];

function sayCommands(): string {
  const width = Math.max(...commands.map((c) => c.name.length));
  return [
    'Laydown plans layered stencil prints, from the first shape to the signed edition.',
    '',
    'laydown COMMAND …',
    '',
    ...commands.map((c) => `  ${c.name.padEnd(width)}  ${c.summary}`),
    '',
    'JOB is a folder with job.json in it, or a .laydown file.',
    'laydown COMMAND --help says more about one of them.',
  ].join('\n');
}

function sayHelp(command: Command): string {
  return `laydown ${command.usage}\n\n${command.help}`;
}

async function main(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    console.log(sayCommands());
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((c) => c.name === name);
  if (!command) {
    console.error(`laydown has no command “${name}”.\n\n${sayCommands()}`);
    return 2;
  }
  let call;
  try {
    call = parseArgs({ args: rest, allowPositionals: true, options: { help: { type: 'boolean', short: 'h' }, ...command.options } });
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n\n${sayHelp(command)}`);
    return 2;
  }
  if (call.values.help) {
    console.log(sayHelp(command));
    return 0;
  }
  return command.run({ words: call.positionals, options: call.values });
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    if (error instanceof ProblemError) for (const p of error.problems) console.error(`${p.severity}: ${tellProblem(p)}`);
    else console.error(error);
    process.exitCode = 1;
  },
);
