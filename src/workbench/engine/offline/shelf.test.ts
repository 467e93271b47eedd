import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { createShelf, type Listed } from './shelf.ts';

const scope = 'http://127.0.0.1:4180/bench/';
const print = (text: string): string => createHash('sha256').update(text).digest('hex');
const files: readonly Listed[] = [
  ['index.html', print('page')],
  ['assets/a.js', print('code')],
];

/** A cupboard like the browser's, in memory. */
function cupboard() {
  const rooms = new Map<string, Map<string, Response>>();
  const room = (name: string): Map<string, Response> => rooms.get(name) ?? rooms.set(name, new Map()).get(name)!;
  const store = {
    open: async (name: string) =>
      ({
        put: async (url: string, r: Response) => void room(name).set(url, r),
        match: async (url: string) => room(name).get(url)?.clone(),
      }) as unknown as Cache,
    keys: async () => [...rooms.keys()],
    delete: async (name: string) => rooms.delete(name),
    match: async (url: RequestInfo | URL) =>
      [...rooms.values()]
        .map((r) => r.get(String(url)))
        .find((r) => r)
        ?.clone(),
  };
  return { store, rooms };
}
const served =
  (texts: Readonly<Record<string, string>>, asked: string[] = []): typeof fetch =>
  async (url) => {
    asked.push(String(url).slice(scope.length));
    const text = texts[String(url).slice(scope.length)];
    return text === undefined ? new Response('', { status: 404 }) : new Response(text);
  };

describe('what is kept for working without a network', () => {
  test('all files are kept, and found again by the address of the page with any job named in it', async () => {
    const shelf = createShelf(files, 'laydown-1', scope, cupboard().store, served({ 'index.html': 'page', 'assets/a.js': 'code' }));
    await shelf.fill();
    const path = shelf.pathOf('GET', `${scope}?job=open`);
    expect(path).toBe('index.html');
    expect(await (await shelf.find(path!))!.text()).toBe('page');
  });

  test('jobs, other addresses and anything but reading are left to the network', () => {
    const shelf = createShelf(files, 'laydown-1', scope, cupboard().store, served({}));
    expect([
      shelf.pathOf('GET', `${scope}open.laydown`),
      shelf.pathOf('GET', 'http://127.0.0.1:4180/index.html'),
      shelf.pathOf('POST', scope),
    ]).toEqual([null, null, null]);
  });

  test('a file that arrives cut off or not at all: nothing is kept', async () => {
    for (const texts of [{ 'index.html': 'page', 'assets/a.js': 'co' }, { 'index.html': 'page' }] as readonly Record<string, string>[]) {
      const { store, rooms } = cupboard();
      await expect(createShelf(files, 'laydown-1', scope, store, served(texts)).fill()).rejects.toThrow('assets/a.js');
      expect(rooms.size).toBe(0);
    }
  });

  test('a file damaged on this machine is fetched again and mended', async () => {
    const { store, rooms } = cupboard();
    const asked: string[] = [];
    const shelf = createShelf(files, 'laydown-1', scope, store, served({ 'index.html': 'page', 'assets/a.js': 'code' }, asked));
    await shelf.fill();
    for (const damaged of ['cod', '']) {
      rooms.get('laydown-1')!.set(`${scope}assets/a.js`, new Response(damaged));
      expect(await (await shelf.find('assets/a.js'))!.text()).toBe('code');
      expect(await rooms.get('laydown-1')!.get(`${scope}assets/a.js`)!.clone().text()).toBe('code');
    }
    rooms.get('laydown-1')!.delete(`${scope}index.html`);
    expect(await (await shelf.find('index.html'))!.text()).toBe('page');
  });

  test('damaged, with another edition on the server: it is given up once and told, and all comes from the network', async () => {
    const { store, rooms } = cupboard();
    await createShelf(files, 'laydown-1', scope, store, served({ 'index.html': 'page', 'assets/a.js': 'code' })).fill();
    rooms.get('laydown-1')!.set(`${scope}assets/a.js`, new Response('half'));
    let told = 0;
    const shelf = createShelf(
      files,
      'laydown-1',
      scope,
      store,
      served({ 'index.html': 'page two', 'assets/b.js': 'code two' }),
      () => told++,
    );
    expect(await (await shelf.find('index.html'))!.text()).toBe('page');
    expect(await shelf.find('assets/a.js')).toBeUndefined();
    expect(await shelf.find('index.html')).toBeUndefined();
    expect([told, rooms.size]).toEqual([1, 0]);
  });

  test('damaged, and no network: what is whole is still served, nothing is thrown away', async () => {
    const { store, rooms } = cupboard();
    await createShelf(files, 'laydown-1', scope, store, served({ 'index.html': 'page', 'assets/a.js': 'code' })).fill();
    rooms.get('laydown-1')!.set(`${scope}assets/a.js`, new Response('half'));
    const shelf = createShelf(files, 'laydown-1', scope, store, () => Promise.reject(new TypeError('no network')));
    expect(await shelf.find('assets/a.js')).toBeUndefined();
    expect(await (await shelf.find('index.html'))!.text()).toBe('page');
  });

  test('a newer Laydown asks only for what changed, and clears the older one away', async () => {
    const { store, rooms } = cupboard();
    await createShelf(files, 'laydown-1', scope, store, served({ 'index.html': 'page', 'assets/a.js': 'code' })).fill();
    const asked: string[] = [];
    const newer = createShelf(
      [['index.html', print('page two')], files[1]],
      'laydown-2',
      scope,
      store,
      served({ 'index.html': 'page two', 'assets/a.js': 'code' }, asked),
    );
    await newer.fill();
    expect(asked).toEqual(['index.html']);
    await newer.clearOthers();
    expect([...rooms.keys()]).toEqual(['laydown-2']);
  });
});
