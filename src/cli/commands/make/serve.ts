import { existsSync, readdirSync, statSync } from 'node:fs';
import type { Server } from 'node:http';
import { basename, dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { jobFileName, writeJobFile } from '../../../core/job/index.ts';
import { fail, ProblemError } from '../../../core/problem.ts';
import { figure, name as asName, say } from '../../../words/index.ts';
import { codeFolder } from '../../code-folder.ts';
import type { Command } from '../../command.ts';
import { readJobAt } from '../../disk/folder.ts';
import { option } from '../../say/help.ts';
import { takeJob } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { problemHere, sayHere } from '../../reader.ts';
import { readWebFiles, webFile, type WebFile } from '../../disk/web-files.ts';
import { openShare } from '../../share/open-share.ts';
import { webServer } from '../../disk/web-server.ts';

export const serve: Command = {
  name: 'serve',
  usage: say('help.serveUsage'),
  summary: say('help.serveSummary'),
  help: [
    say('help.serveText'),
    option('--port N', say('help.servePort')),
    option('--share', say('help.serveShare')),
    option('--share-on ADDRESS', say('help.serveShareOn')),
  ],
  options: { port: { type: 'string' }, share: { type: 'boolean' }, 'share-on': { type: 'string' } },
  async run(call) {
    const folder = fileURLToPath(new URL('workbench/', codeFolder));
    if (!existsSync(`${folder}index.html`)) fail('not-built', say('where.workbench'), say('refusals.notBuilt'), say('refusals.runStart'));
    const path = call.words[0];
    if (path !== undefined) takeJob(path);
    const files = readWebFiles(folder);
    const wish = call.options['share-on'];
    const shared =
      call.options['share'] === true || wish !== undefined ? await openShare(files, typeof wish === 'string' ? wish : null) : null;
    const server = webServer({
      files,
      ...(shared ? { desk: shared.desk } : {}),
      ...(path === undefined ? {} : { job: keptJob(path) }),
      sayFault: (error) => (error instanceof ProblemError ? error.problems.map(problemHere).join('\n') : sayHere('cli.cannotOpen')),
    });
    const usual = Number(call.options['port'] ?? 4180);
    if (!Number.isInteger(usual) || usual < 0 || usual > 65535)
      fail(
        'bad-port',
        placeOf('--port'),
        say('refusals.notAPort', { text: asName(String(call.options['port'])) }),
        say('cli.wholeFromTo', { low: figure(0), high: figure(65535) }),
      );
    const port = await listen(server, usual).catch(() => listen(server, 0));
    console.log(sayHere('inkAnswers.open', { address: asName(pageAddress(port, path !== undefined, shared !== null)) }));
    shared?.tell();
    server.on('error', () => undefined);
    await new Promise<void>((resolve) => {
      const end = (): void => {
        shared?.close();
        server.closeAllConnections();
        server.close(() => resolve());
      };
      process.once('SIGINT', end);
      process.once('SIGTERM', end);
    });
    return 0;
  },
};

function pageAddress(port: number, job: boolean, shared: boolean): string {
  const asked = [...(job ? ['job=open'] : []), ...(shared ? ['share=on'] : [])];
  return `http://127.0.0.1:${port}/${asked.length > 0 ? `?${asked.join('&')}` : ''}`;
}

/** The job packed, and packed anew only when something in it has changed. */
function keptJob(path: string): () => WebFile {
  let kept: { readonly state: string; readonly file: WebFile } | null = null;
  return () => {
    const state = stateOf(path);
    if (kept?.state !== state) kept = { state, file: webFile(writeJobFile(readJobAt(path)), 'application/zip') };
    return kept.file;
  };
}

/** Names, sizes and times of a job's files. */
function stateOf(path: string): string {
  const at = basename(path) === jobFileName ? dirname(resolve(path)) : resolve(path);
  const tell = (file: string): string => {
    const info = statSync(file);
    return `${file} ${info.size} ${info.mtimeMs}`;
  };
  if (!statSync(at).isDirectory()) return tell(at);
  return readdirSync(at, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => tell(resolve(entry.parentPath, entry.name)))
    .sort()
    .join('\n');
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.removeListener('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : port);
    });
  });
}
