import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { WebFile } from './web-files.ts';

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

/** Sent with everything. */
export const guards = {
  'Content-Security-Policy': contentSecurityPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cache-Control': 'no-cache',
};

export interface Served {
  readonly files: ReadonlyMap<string, WebFile>;
  /** The job under `/open.laydown`; what is thrown is told as text. */
  readonly job?: () => WebFile;
  readonly sayFault: (error: unknown) => string;
  /** While the count is shared: what the page says under `/share/desk`, and what it hears. */
  readonly desk?: (request: IncomingMessage, response: ServerResponse, origin: string) => Promise<void>;
}

/**
 * Serves the page on this machine only, to this machine's own browser only: the name it is asked by must be this machine's (else a page elsewhere
 * could have its own name point here and read the job), and pages of other origins get nothing. Whatever is asked, it goes on serving.
 */
export function webServer(served: Served): Server {
  const server = createServer((request, response) => {
    // A connection that breaks off is nobody's fault.
    request.on('error', () => undefined);
    response.on('error', () => undefined);
    try {
      answer(served, request, response, (server.address() as AddressInfo | null)?.port ?? 0);
    } catch {
      end(response, 500);
    }
  });
  server.on('clientError', (_error, socket) => {
    if (socket.writable) socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\n\r\n');
    else socket.destroy();
  });
  server.requestTimeout = 30_000;
  server.maxConnections = 256;
  return server;
}

function answer({ files, job, sayFault, desk }: Served, request: IncomingMessage, response: ServerResponse, port: number): void {
  for (const [name, value] of Object.entries(guards)) response.setHeader(name, value);
  if (!isThisMachine(request.headers.host, port)) return end(response, 421);
  if (desk && request.method === 'POST' && pathOf(request.url ?? '') === '/share/desk') {
    if (!isOwnPage(request, '/share/desk')) return end(response, 403);
    return void desk(request, response, `http://${request.headers.host}`).catch(() => end(response, 500));
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return end(response, 405);
  }
  const path = pathOf(request.url ?? '');
  if (path === null) return end(response, 400);
  if (!isOwnPage(request, path)) return end(response, 403);
  let file = files.get(path);
  if (job && path === '/open.laydown') {
    try {
      file = job();
      response.setHeader('Cache-Control', 'no-store');
    } catch (error) {
      response.setHeader('Content-Type', 'text/plain; charset=utf-8');
      response.statusCode = 500;
      return void response.end(sayFault(error));
    }
  }
  if (!file) return end(response, 404);
  response.setHeader('ETag', file.etag);
  if (request.headers['if-none-match'] === file.etag) return end(response, 304);
  response.writeHead(200, { 'Content-Type': file.type, 'Content-Length': file.bytes.length });
  response.end(request.method === 'HEAD' ? undefined : file.bytes);
}

function end(response: ServerResponse, status: number): void {
  if (!response.headersSent) response.statusCode = status;
  response.end();
}

function isThisMachine(host: string | undefined, port: number): boolean {
  return [`127.0.0.1:${port}`, `localhost:${port}`, `[::1]:${port}`].includes(host?.toLowerCase() ?? '');
}

/** The path without the question behind it; null where it can't be read. */
export function pathOf(url: string): string | null {
  if (!url.startsWith('/')) return null;
  try {
    return decodeURIComponent(url.replace(/[?#].*$/s, ''));
  } catch {
    return null;
  }
}

/** Asked for by this page itself or typed in (W3C Fetch Metadata); from elsewhere one may only follow a link to the page. Old browsers say nothing of it. */
export function isOwnPage(request: IncomingMessage, path: string): boolean {
  const site = request.headers['sec-fetch-site'];
  if (site === undefined || site === 'same-origin' || site === 'none') return true;
  return (
    (path === '/' || path === '/index.html') &&
    request.headers['sec-fetch-mode'] === 'navigate' &&
    request.headers['sec-fetch-dest'] === 'document'
  );
}
