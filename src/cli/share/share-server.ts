import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { guards, isOwnPage, pathOf } from '../disk/web-server.ts';
import type { WebFile } from '../disk/web-files.ts';
import type { Counts, Sharing } from './sharing.ts';

const mostBytes = 2_000_000;
/** The counting page and what it is made of; the bench itself and every job stay where they are. */
const shown = /^\/(away\.html|assets\/[\w.-]+\.(js|css|ttf|woff2))$/;

/**
 * The one door to the local network, open for a session: the counting page to whoever knows the address; the count to devices that were let in. Asked by
 * another name than its own address (a page elsewhere that has its name point here), or by another page, it answers nothing.
 */
export function shareServer(files: ReadonlyMap<string, WebFile>, address: string, sharing: Sharing): Server {
  const server = createServer((request, response) => {
    request.on('error', () => undefined);
    response.on('error', () => undefined);
    const port = (server.address() as AddressInfo | null)?.port ?? 0;
    void answer(files, `${address}:${port}`, sharing, request, response).catch(() => end(response, 500));
  });
  server.on('clientError', (_error, socket) => {
    if (socket.writable) socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\n\r\n');
    else socket.destroy();
  });
  server.requestTimeout = 20_000;
  server.maxConnections = 64;
  return server;
}

async function answer(
  files: ReadonlyMap<string, WebFile>,
  host: string,
  sharing: Sharing,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  for (const [name, value] of Object.entries(guards)) response.setHeader(name, value);
  if (request.headers.host?.toLowerCase() !== host) return end(response, 421);
  const path = pathOf(request.url ?? '');
  if (path === null) return end(response, 400);
  if (!isOwnPage(request, path)) return end(response, 403);
  if (request.method === 'GET') {
    const file = path === '/' ? files.get('/away.html') : shown.test(path) ? files.get(path) : undefined;
    if (!file) return end(response, 404);
    response.writeHead(200, { 'Content-Type': file.type, 'Content-Length': file.bytes.length });
    return void response.end(file.bytes);
  }
  if (request.method !== 'POST') return end(response, 405);
  const said = await readSaid(request, `http://${host}`);
  if (said === null) return end(response, 400);
  if (path === '/enter') {
    const token = typeof said['code'] === 'string' ? sharing.enter(said['code']) : null;
    return token === null ? end(response, 401) : sendJson(response, { token });
  }
  if (path !== '/count') return end(response, 404);
  const { token, mark, counts } = said;
  if (typeof token !== 'string' || typeof mark !== 'number' || !isCounts(counts)) return end(response, 400);
  const heard = sharing.away(token, mark, counts);
  return heard === null ? end(response, 401) : sendJson(response, heard);
}

/** A small JSON object that the page itself sent; null for anything else. */
export async function readSaid(request: IncomingMessage, origin: string): Promise<Record<string, unknown> | null> {
  if (request.headers['content-type'] !== 'application/json') return null;
  if (request.headers.origin !== undefined && request.headers.origin !== origin) return null;
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > mostBytes) return null;
    parts.push(part);
  }
  try {
    const said: unknown = JSON.parse(Buffer.concat(parts).toString('utf8'));
    return typeof said === 'object' && said !== null && !Array.isArray(said) ? (said as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}

export const isLines = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((line) => typeof line === 'string');

const isCounts = (value: unknown): value is readonly Counts[] =>
  Array.isArray(value) &&
  value.every((one: Partial<Record<keyof Counts, unknown>> | null) => typeof one?.print === 'string' && isLines(one.lines));

export function sendJson(response: ServerResponse, value: unknown): void {
  response.setHeader('Cache-Control', 'no-store');
  response.writeHead(200, { 'Content-Type': 'application/json' });
  response.end(JSON.stringify(value));
}

function end(response: ServerResponse, status: number): void {
  if (!response.headersSent) response.statusCode = status;
  response.end();
}
