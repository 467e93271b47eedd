import { request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { logLine } from '../../core/edition/index.ts';
import { webFile } from '../disk/web-files.ts';
import { shareServer } from './share-server.ts';
import { createSharing } from './sharing.ts';

const line = (number: number, sheet: string): string =>
  logLine(number, { kind: 'pull', run: 'sky', sheet, at: `2026-05-01T10:00:0${number}Z` }).trimEnd();

describe('a count that is shared', () => {
  test('a code lets one device in; guessing closes the door for a while', () => {
    let now = 0;
    const codes: string[] = [];
    const sharing = createSharing(
      (code) => codes.push(code),
      () => now,
    );
    const first = sharing.code;
    expect(sharing.enter(first.toLowerCase())).toMatch(/^[0-9a-f]{64}$/);
    expect(sharing.enter(first)).toBe(null);
    expect(sharing.code).not.toBe(first);
    for (let i = 0; i < 4; i++) expect(sharing.enter('AAAAAAAA')).toBe(null);
    const guessed = sharing.code;
    expect(guessed).not.toBe(codes[0]);
    // Too many: even the right one waits.
    expect(sharing.enter(guessed)).toBe(null);
    now = 59_000;
    expect(sharing.enter(sharing.code)).toBe(null);
    now = 60_000;
    expect(sharing.enter(sharing.code)).not.toBe(null);
  });

  test('what two devices counted comes together without losing a line; prints are kept apart; nonsense is not taken in', () => {
    const sharing = createSharing();
    const [a, b] = [sharing.enter(sharing.code)!, sharing.enter(sharing.code)!];
    expect(sharing.away('no such token', -1, [])).toBe(null);
    sharing.desk({ print: 'Tide', view: '{"title":"Tide"}', lines: [line(1, 'A1')] });
    // Both count while they don't see each other: the same numbers, other sheets.
    const seen = sharing.away(a, -1, [{ print: 'Tide', lines: [line(2, 'A2'), line(3, 'A3')] }])!;
    sharing.away(b, -1, [{ print: 'Tide', lines: [line(2, 'A9'), 'nonsense', `${line(4, 'A4')}\n${line(5, 'A5')}`] }]);
    expect(seen).toMatchObject({ view: '{"title":"Tide"}', mark: 1, print: 'Tide' });
    const all = [line(1, 'A1'), line(2, 'A2'), line(3, 'A3'), line(2, 'A9')];
    expect(sharing.desk({ print: 'Tide', view: null, lines: [] })).toEqual({ lines: all, devices: 2 });
    // Twice sent is once counted; the view is not sent again.
    expect(sharing.away(a, 1, [{ print: 'Tide', lines: [line(2, 'A2')] }])).toEqual({ view: null, mark: 1, print: 'Tide', lines: all });
    expect(sharing.desk({ print: 'Heron', view: '{}', lines: [] }).lines).toEqual([]);
    sharing.away(a, 1, [{ print: 'Never shown', lines: [line(1, 'B1')] }]);
    expect(sharing.desk({ print: 'Never shown', view: '{}', lines: [] }).lines).toEqual([]);
    expect(sharing.desk({ print: 'Tide', view: null, lines: [] }).lines).toEqual(all);
  });
});

describe('the door to the network', () => {
  const sharing = createSharing();
  let server: Server, port: number;
  beforeAll(async () => {
    const file = (text: string): ReturnType<typeof webFile> => webFile(new TextEncoder().encode(text), 'text/html; charset=utf-8');
    const names = ['/', '/index.html', '/away.html', '/assets/away-1.js', '/assets/tide-pool.json', '/sw.js', '/open.laydown'];
    server = shareServer(new Map(names.map((name) => [name, file(name)])), '127.0.0.1', sharing);
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    port = (server.address() as AddressInfo).port;
  });
  afterAll(() => {
    server.closeAllConnections();
    server.close();
  });
  const ask = (method: string, path: string, headers: Record<string, string> = {}, body = ''): Promise<{ status: number; text: string }> =>
    new Promise((resolve, reject) => {
      const own = { Host: `127.0.0.1:${port}`, ...(method === 'POST' ? { 'Content-Type': 'application/json' } : {}) };
      request({ host: '127.0.0.1', port, path, method, headers: { ...own, ...headers } }, (response) => {
        let text = '';
        response.setEncoding('utf8').on('data', (part: string) => (text += part));
        response.on('end', () => resolve({ status: response.statusCode ?? 0, text }));
      })
        .on('error', reject)
        .end(body);
    });

  test('the counting page and its parts, and nothing else of the machine', async () => {
    expect(await ask('GET', '/')).toEqual({ status: 200, text: '/away.html' });
    expect((await ask('GET', '/assets/away-1.js')).status).toBe(200);
    for (const path of [
      '/index.html',
      '/sw.js',
      '/open.laydown',
      '/assets/tide-pool.json',
      '/share/desk',
      '/../package.json',
      '/assets/../sw.js',
    ])
      expect((await ask('GET', path)).status, path).toBe(404);
    for (const method of ['PUT', 'DELETE', 'OPTIONS', 'HEAD']) expect((await ask(method, '/')).status, method).toBe(405);
  });

  test('counts only for who was let in, only asked by its own address and its own page', async () => {
    const enter = (code: string, headers = {}): Promise<{ status: number; text: string }> =>
      ask('POST', '/enter', headers, JSON.stringify({ code }));
    for (const host of ['localhost', `evil.example:${port}`, '127.0.0.1'])
      expect((await enter(sharing.code, { Host: host })).status).toBe(421);
    expect((await enter(sharing.code, { 'Sec-Fetch-Site': 'cross-site' })).status).toBe(403);
    expect((await enter(sharing.code, { Origin: 'http://evil.example' })).status).toBe(400);
    expect((await enter(sharing.code, { 'Content-Type': 'text/plain' })).status).toBe(400);
    expect((await enter('WRONG')).status).toBe(401);
    sharing.desk({ print: 'Tide', view: '{}', lines: [] });
    const { token } = JSON.parse((await enter(sharing.code)).text) as { token: string };
    const count = (said: unknown): Promise<{ status: number; text: string }> => ask('POST', '/count', {}, JSON.stringify(said));
    expect((await count({ token: 'x', mark: 0, counts: [] })).status).toBe(401);
    for (const odd of [
      null,
      [],
      { token },
      { token, mark: 0, counts: [{ print: 'Tide', lines: [7] }] },
      { token, mark: 0, counts: [null] },
    ])
      expect((await count(odd)).status).toBe(400);
    expect((await ask('POST', '/count', {}, `{"token":"${'x'.repeat(2_100_000)}"}`).catch(() => ({ status: 400 }))).status).toBe(400);
    const heard = await count({ token, mark: 1, counts: [{ print: 'Tide', lines: [line(1, 'A1')] }] });
    expect(JSON.parse(heard.text)).toEqual({ view: null, mark: 1, print: 'Tide', lines: [line(1, 'A1')] });
  });
});
