import { createServer } from 'node:http';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sirv from 'sirv';
import { writeJobFile } from '../core/job/index.ts';
import { fail, ProblemError } from '../core/problem.ts';
import { figure, name as asName, say } from '../words/index.ts';
import type { Command } from './command.ts';
import { readJobAt } from './folder.ts';
import { option } from './help.ts';
import { takeJob } from './load.ts';
import { placeOf } from './options.ts';
import { problemHere, sayHere } from './reader.ts';

/** Nothing but the Workbench's own files may run or be asked for. The page says the same in its own head. */
export const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

export const serve: Command = {
  name: 'serve',
  usage: say('help.serveUsage'),
  summary: say('help.serveSummary'),
  help: [say('help.serveText'), option('--port N', say('help.servePort'))],
  options: { port: { type: 'string' } },
  async run(call) {
    const folder = fileURLToPath(new URL('../workbench/', import.meta.url));
    if (!existsSync(`${folder}index.html`)) fail('not-built', say('where.workbench'), say('refusals.notBuilt'), say('refusals.runStart'));
    const path = call.words[0];
    if (path !== undefined) takeJob(path);
    const files = sirv(folder, {
      dev: false,
      etag: true,
      setHeaders(response) {
        response.setHeader('Content-Security-Policy', contentSecurityPolicy);
        response.setHeader('X-Content-Type-Options', 'nosniff');
        response.setHeader('Referrer-Policy', 'no-referrer');
        response.setHeader('Cache-Control', 'no-cache');
      },
    });
    const server = createServer((request, response) => {
      if (path !== undefined && request.url?.split('?')[0] === '/open.laydown') {
        try {
          const bytes = writeJobFile(readJobAt(path));
          response.writeHead(200, { 'Content-Type': 'application/zip', 'Cache-Control': 'no-store' }).end(bytes);
        } catch (error) {
          response
            .writeHead(500, { 'Content-Type': 'text/plain; charset=utf-8' })
            .end(error instanceof ProblemError ? error.problems.map(problemHere).join('\n') : sayHere('cli.cannotOpen'));
        }
        return;
      }
      files(request, response, () => {
        response.writeHead(404).end();
      });
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
    console.log(sayHere('inkAnswers.open', { address: asName(`http://127.0.0.1:${port}/${path === undefined ? '' : '?job=open'}`) }));
    await new Promise<void>((resolve) => {
      const end = (): void => {
        server.closeAllConnections();
        server.close(() => resolve());
      };
      process.once('SIGINT', end);
      process.once('SIGTERM', end);
    });
    return 0;
  },
};

function listen(server: ReturnType<typeof createServer>, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.removeListener('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : port);
    });
  });
}
