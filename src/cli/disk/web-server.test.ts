import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request, type IncomingHttpHeaders, type Server } from 'node:http';
import { connect, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readWebFiles, webFile } from './web-files.ts';
import { webServer } from './web-server.ts';

let folder: string, server: Server, port: number;
let packed = 0;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'web-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<p>bench</p>');
  writeFileSync(join(folder, 'assets/a.js'), 'code');
  const job = (): ReturnType<typeof webFile> => {
    if (packed++ > 0) throw new Error('gone');
    return webFile(new Uint8Array(3), 'application/zip');
  };
  server = webServer({ files: readWebFiles(folder), job, sayFault: () => 'It is gone.' });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  port = (server.address() as AddressInfo).port;
});
afterAll(() => {
  server.closeAllConnections();
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}
function ask(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answered> {
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port, path, method, headers: { Host: `127.0.0.1:${port}`, ...headers } }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => (text += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
    })
      .on('error', reject)
      .end();
  });
}

test('the page and its parts, by their types and with the guards on everything', async () => {
  const page = await ask('/?job=open');
  expect([page.status, page.text, page.headers['content-type']]).toEqual([200, '<p>bench</p>', 'text/html; charset=utf-8']);
  for (const answered of [
    page,
    await ask('/assets/a.js'),
    await ask('/nowhere'),
    await ask('/', {}, 'POST'),
    await ask('/', { Host: 'evil.example' }),
  ]) {
    expect(answered.headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(answered.headers['x-content-type-options']).toBe('nosniff');
    expect(answered.headers['cross-origin-resource-policy']).toBe('same-origin');
  }
  expect((await ask('/', { 'If-None-Match': String(page.headers['etag']) })).status).toBe(304);
  expect((await ask('/', {}, 'HEAD')).text).toBe('');
});

test('another name for this machine, another origin, another method: nothing', async () => {
  for (const host of ['evil.example', `evil.example:${port}`, '127.0.0.1', `127.0.0.1:${port + 1}`, `127.0.0.1.evil.example:${port}`])
    expect((await ask('/open.laydown', { Host: host })).status).toBe(421);
  for (const site of ['cross-site', 'same-site']) expect((await ask('/open.laydown', { 'Sec-Fetch-Site': site })).status).toBe(403);
  const link = { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'navigate', 'Sec-Fetch-Dest': 'document' };
  expect([(await ask('/', link)).status, (await ask('/assets/a.js', link)).status]).toEqual([200, 403]);
  expect((await ask('/', { ...link, 'Sec-Fetch-Dest': 'iframe' })).status).toBe(403);
  for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'TRACE']) expect((await ask('/', {}, method)).status).toBe(405);
});

test('odd requests, files that go, jobs that can not be packed: it goes on', async () => {
  for (const range of ['bytes=99999-', 'bytes=-0', 'bytes=5-1', 'bytes=a-b', 'bytes=0-,0-,0-'])
    expect((await ask('/', { Range: range })).status).toBe(200);
  expect((await ask('/%E0%A4%A')).status).toBe(400);
  for (const path of ['/../../etc/passwd', '/%2e%2e/%2e%2e/etc/passwd', '/assets/', '/assets//a.js', `/${'a'.repeat(9000)}`])
    expect((await ask(path)).status).toBe(404);
  for (const raw of ['GET\r\n\r\n', 'nonsense', '\0\0\0', `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX: ${'y'.repeat(40_000)}\r\n\r\n`])
    await new Promise<void>((resolve) => {
      const socket = connect(port, '127.0.0.1', () => socket.end(raw));
      socket
        .on('error', () => resolve())
        .on('close', () => resolve())
        .resume();
    });
  rmSync(join(folder, 'assets/a.js'));
  expect((await ask('/assets/a.js')).text).toBe('code');
  expect((await ask('/open.laydown')).status).toBe(200);
  const gone = await ask('/open.laydown');
  expect([gone.status, gone.text]).toEqual([500, 'It is gone.']);
  expect((await ask('/')).status).toBe(200);
});
