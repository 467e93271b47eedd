import { fork, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Tally } from './tally.ts';
import type { Fed, ToFeed } from './victim.ts';

const mostMs = 20_000,
  mostMegabytes = 1000;

/** Feeds files to a process of its own; one that dies or takes too long is ended and started again, and the file that did it is told. */
export async function feedAll(
  files: Iterable<{ readonly kind: ToFeed['kind']; readonly bytes: Uint8Array; readonly name: string; readonly tally: Tally }>,
  until: number,
): Promise<void> {
  let victim: ChildProcess | null = null;
  let id = 0;
  for (const { kind, bytes, name, tally } of files) {
    if (Date.now() > until) break;
    victim ??= await start();
    const fed = await feedOne(victim, { id: ++id, kind, base64: Buffer.from(bytes).toString('base64') });
    tally.tried++;
    if (typeof fed === 'string') {
      if (fed === 'too long') tally.slow++;
      else tally.dead++;
      tally.tell(`${name}: ${fed}`);
      victim = null;
      continue;
    }
    tally.slowestMs = Math.max(tally.slowestMs, fed.ms);
    tally.mostMegabytes = Math.max(tally.mostMegabytes, fed.megabytes);
    if (fed.megabytes > mostMegabytes) tally.large++;
    if (fed.outcome === 'threw') tally.dead++;
    else if (fed.outcome === 'nonsense') tally.lost++;
    else tally.survived++;
    if (fed.outcome === 'threw' || fed.outcome === 'nonsense' || fed.megabytes > mostMegabytes)
      tally.tell(`${name}: ${fed.outcome} ${fed.what.split('\n').slice(0, 3).join(' | ')}`);
    if (fed.outcome === 'read') tally.read++;
  }
  victim?.kill('SIGKILL');
}

function start(): Promise<ChildProcess> {
  const victim = fork(fileURLToPath(new URL('./victim.ts', import.meta.url)), {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
  });
  return new Promise((resolve, reject) => {
    victim
      .once('message', () => resolve(victim))
      .once('exit', () => reject(new Error('The process for damaged files could not be started.')));
  });
}

function feedOne(victim: ChildProcess, ask: ToFeed): Promise<Fed | string> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => {
      victim.kill('SIGKILL');
      over('too long');
    }, mostMs);
    const died = (): void => over('the process died');
    const heard = (fed: Fed): void => {
      if (fed.id === ask.id) over(fed);
    };
    function over(end: Fed | string): void {
      clearTimeout(timer);
      victim.off('exit', died).off('message', heard);
      resolve(end);
    }
    victim.on('exit', died).on('message', heard);
    victim.send(ask);
  });
}
