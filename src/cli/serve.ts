import { createServer } from 'node:http';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sirv from 'sirv';
import { writeJobFile } from '../core/job/index.ts';
import { fail } from '../core/problem.ts';
import type { Command } from './command.ts';
import { readJobAt } from './folder.ts';

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
  usage: 'serve [JOB] [--port N]',
  summary: 'opens the Workbench in the browser, on this machine only',
  help: 'Serves the Workbench on 127.0.0.1, with JOB open if one is named. Nothing leaves the machine. Ctrl-C ends it.\n--port N   which port (default 4180, a free one if it is taken)',
  options: { port: { type: 'string' } },
  async run(call) {
    const folder = fileURLToPath(new URL('../workbench/', import.meta.url));
    if (!existsSync(`${folder}index.html`)) fail('not-built', 'the Workbench', 'It is not built yet.', 'Run npm start, which builds it.');
    const path = call.words[0];
    if (path !== undefined) readJobAt(path);
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
            .end(error instanceof Error ? error.message : String(error));
        }
        return;
      }
      files(request, response, () => {
        response.writeHead(404).end();
      });
    });
    const usual = Number(call.options['port'] ?? 4180);
    if (!Number.isInteger(usual) || usual < 0 || usual > 65535)
      fail('bad-port', '--port', `“${String(call.options['port'])}” is no port.`, 'Give a number from 0 to 65535.');
    const port = await listen(server, usual).catch(() => listen(server, 0));
    console.log(`The Workbench is open at http://127.0.0.1:${port}/${path === undefined ? '' : '?job=open'}  (Ctrl-C ends it)`);
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
