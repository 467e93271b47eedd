import { request } from 'node:http';
import { connect, type AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { readWebFiles, webFile } from '../../src/cli/disk/web-files.ts';
import { webServer } from '../../src/cli/disk/web-server.ts';
import { seeded, type Random } from '../../src/core/random.ts';
import type { Wish } from './inputs.ts';
import { Tally } from './tally.ts';

const secret = 'the job itself';

/** Odd requests to the server that serves the built page: it must go on, and give the job to nobody but its own page. */
export async function attackServer({ seed, times, until }: Wish): Promise<Tally[]> {
  const tally = new Tally('requests');
  const random = seeded(seed);
  const files = readWebFiles(fileURLToPath(new URL('../../dist/workbench/', import.meta.url)));
  const job = webFile(new TextEncoder().encode(secret), 'application/zip');
  const server = webServer({ files, job: () => job, sayFault: String });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  try {
    for (let i = 0; i < times && Date.now() < until; i++) {
      tally.tried++;
      const told = random.next() < 0.3 ? await raw(port, random) : await odd(port, random);
      const alive = await ask(port, '/', 'GET', { host: `127.0.0.1:${port}` });
      if (told.includes(secret)) tally.lost++;
      else if (alive.status !== 200) tally.dead++;
      else tally.survived++;
    }
  } finally {
    server.closeAllConnections();
    server.close();
  }
  return [tally];
}

const oneOf = <T>(random: Random, of: readonly T[]): T => of[random.below(of.length)];

/** A request that no page of its own would send. */
async function odd(port: number, random: Random): Promise<string> {
  const paths = [
    '/open.laydown',
    '/',
    '/../../etc/passwd',
    '/%2e%2e%2fpackage.json',
    '/%ff%fe',
    `/${'x'.repeat(random.below(9000))}`,
    '/assets/',
    '/index.html?job=open',
    '//open.laydown',
    '/open.laydown/',
  ];
  const headers: Record<string, string> = {
    host: oneOf(random, ['evil.example', `evil.example:${port}`, `127.0.0.1:${port}`, `127.0.0.1:${port}@evil.example`, '']),
  };
  if (random.next() < 0.5)
    headers['range'] = oneOf(random, [
      'bytes=99999999-',
      'bytes=-',
      'bytes=0-0,1-1,2-2',
      'bytes=5-1',
      'lines=1-2',
      `bytes=${'0-1,'.repeat(500)}`,
    ]);
  const foreign = headers['host'] !== `127.0.0.1:${port}` || random.next() < 0.7;
  if (foreign) headers['sec-fetch-site'] = oneOf(random, ['cross-site', 'same-site']);
  if (random.next() < 0.3) headers['if-none-match'] = oneOf(random, ['*', '"', 'W/"x"', '\u00e9']);
  const answered = await ask(
    port,
    oneOf(random, paths),
    oneOf(random, ['GET', 'GET', 'HEAD', 'POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH']),
    headers,
  );
  // Asked for by the page's own name and nothing that speaks against it: then it may have it.
  return foreign ? answered.text : '';
}

function ask(port: number, path: string, method: string, headers: Record<string, string>): Promise<{ status: number; text: string }> {
  return new Promise((resolve) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers, setHost: false }, (response) => {
      let text = '';
      response.setEncoding('latin1').on('data', (part: string) => {
        if (text.length < 1000) text += part;
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, text })).on('error', () => resolve({ status: 0, text }));
    });
    sent.on('error', () => resolve({ status: 0, text: '' })).setTimeout(5000, () => sent.destroy());
    sent.end();
  });
}

/** Bytes that are hardly a request at all; broken off at times. */
function raw(port: number, random: Random): Promise<string> {
  const texts = [
    'GET\r\n\r\n',
    'GET /open.laydown HTTP/1.1\r\n\r\n',
    'GET /open.laydown HTTP/1.0\r\n\r\n',
    '\0\0\0\0',
    `GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n`,
    'GET http://127.0.0.1/open.laydown HTTP/1.1\r\nHost: evil.example\r\n\r\n',
    `GET / HTTP/1.1\r\n${'X: y\r\n'.repeat(3000)}\r\n`,
    'POST / HTTP/1.1\r\nTransfer-Encoding: chunked\r\nContent-Length: 5\r\n\r\nzz\r\n',
  ];
  return new Promise((resolve) => {
    let text = '';
    const socket = connect(port, '127.0.0.1', () => {
      socket.write(oneOf(random, texts));
      if (random.next() < 0.5) setTimeout(() => socket.destroy(), 5);
      else socket.end();
    });
    socket.setEncoding('latin1').on('data', (part) => (text += String(part)));
    socket.on('error', () => undefined).on('close', () => resolve(text));
    socket.setTimeout(3000, () => socket.destroy());
  });
}
