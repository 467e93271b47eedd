import type { IncomingMessage, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { networkInterfaces } from 'node:os';
import encodeQR from 'qr';
import { fail } from '../../core/problem.ts';
import { name as asName, say } from '../../words/index.ts';
import { placeOf } from '../options.ts';
import { sayHere } from '../reader.ts';
import type { WebFile } from '../disk/web-files.ts';
import { isLines, readSaid, sendJson, shareServer } from './share-server.ts';
import { createSharing } from './sharing.ts';

export interface OpenShare {
  readonly desk: (request: IncomingMessage, response: ServerResponse, origin: string) => Promise<void>;
  /** Where it is, the code, and what is not private. */
  tell(): void;
  close(): void;
}

/** Opens the counting page to the local network, on one address of this machine and any free port. Refuses where there is none. */
export async function openShare(files: ReadonlyMap<string, WebFile>, wish: string | null): Promise<OpenShare> {
  const own = Object.values(networkInterfaces()).flatMap((all) => all ?? []);
  const address = wish ?? own.find((one) => one.family === 'IPv4' && !one.internal)?.address;
  if (address === undefined) fail('no-network', placeOf('--share'), say('refusals.noNetwork'), say('refusals.joinNetwork'));
  if (!own.some((one) => one.address === address && one.family === 'IPv4'))
    fail(
      'not-own-address',
      placeOf('--share-on'),
      say('refusals.notOwnAddress', { address: asName(address) }),
      say('refusals.ownAddresses'),
    );
  let port = 0;
  const link = (): string => `http://${address}:${port}/#${sharing.code}`;
  const tellCode = (): void => {
    console.log(encodeQR(link(), 'ascii'));
    console.log(sayHere('cli.shareCode', { address: asName(`http://${address}:${port}/`), code: asName(sharing.code) }));
  };
  const sharing = createSharing(tellCode);
  const server = shareServer(files, address, sharing);
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, address, resolve);
  });
  server.on('error', () => undefined);
  port = (server.address() as AddressInfo).port;
  return {
    async desk(request, response, origin) {
      const said = await readSaid(request, origin);
      const { print, view, lines } = said ?? {};
      if (!said || typeof print !== 'string' || !(view === null || typeof view === 'string') || !isLines(lines)) {
        response.statusCode = 400;
        return void response.end();
      }
      sendJson(response, {
        ...sharing.desk({ print, view, lines }),
        address: `http://${address}:${port}/`,
        code: sharing.code,
        qr: encodeQR(link(), 'svg'),
      });
    },
    tell() {
      tellCode();
      console.log(sayHere('cli.shareOpen'));
    },
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}
