import { spawn, type ChildProcess } from 'node:child_process';
import { createRequire } from 'node:module';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';

/** A browser engine of the machine's own packages, told what to do by the standard way that it brings along: nothing more than these tests need. */
export interface Driver {
  go(url: string): Promise<void>;
  /** The value of an expression in the page, awaited; plain data only. */
  look<T>(expression: string): Promise<T>;
  /** A PNG of what is in sight. */
  picture(): Promise<Buffer>;
  /** The window, px. */
  resize(width: number, height: number): Promise<void>;
  /** False: its driver passes fingers on as a mouse. */
  readonly fingers: boolean;
  /** Fingers put down together, moved along their ways and lifted: points of the page in px, one way a finger. */
  touch(ways: readonly (readonly (readonly [number, number])[])[]): Promise<void>;
  /** As a power cut would: all its processes at once, with no goodbye. */
  kill(): Promise<void>;
}

export interface Engine {
  readonly name: string;
  readonly installed: boolean;
  /** What it keeps outlives its process. */
  readonly keeps: boolean;
  start(profile: string): Promise<Driver>;
}

/** The window that the bench is looked at in, px. */
export const benchSize = { width: 1440, height: 900 };

/** Fingers as WebDriver and WebDriver BiDi both tell them. */
const fingers = (ways: readonly (readonly (readonly [number, number])[])[]): object[] =>
  ways.map((way, i) => ({
    type: 'pointer',
    id: `finger${i}`,
    parameters: { pointerType: 'touch' },
    actions: [
      { type: 'pointerMove', x: Math.round(way[0][0]), y: Math.round(way[0][1]), duration: 0 },
      { type: 'pointerDown', button: 0 },
      ...way.slice(1).map(([x, y]) => ({ type: 'pointerMove', x: Math.round(x), y: Math.round(y), duration: 30 })),
      { type: 'pointerUp', button: 0 },
    ],
  }));

const firefoxPath = '/usr/bin/firefox-esr';
const webkitPath = ['4.1', '4.0', '6.0']
  .map((edition) => `/usr/lib/${process.arch === 'arm64' ? 'aarch64' : 'x86_64'}-linux-gnu/webkit2gtk-${edition}/MiniBrowser`)
  .find(existsSync);

const started = new Set<ChildProcess>();
process.on('exit', () => started.forEach(killAll));

function begin(command: string, args: readonly string[], env: Record<string, string> = {}): ChildProcess {
  const child = spawn(command, args, { detached: true, stdio: 'ignore', env: { ...process.env, ...env } });
  started.add(child);
  return child;
}

function killAll(child: ChildProcess): void {
  try {
    process.kill(-child.pid!, 'SIGKILL');
  } catch {
    // It is gone already.
  }
  started.delete(child);
}

const gone = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) return resolve();
    child.once('exit', () => resolve());
    killAll(child);
  });

async function patiently<T>(ask: () => T | Promise<T>, what: string): Promise<NonNullable<T>> {
  const until = Date.now() + 40_000;
  for (;;) {
    const found = await Promise.resolve()
      .then(ask)
      .catch(() => null);
    if (found) return found;
    if (Date.now() > until) throw new Error(`${what} did not come.`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => resolve(port));
    });
  });

/** Firefox over WebDriver BiDi (W3C): one socket, numbered questions. */
const firefox: Engine = {
  name: 'Firefox',
  installed: existsSync(firefoxPath),
  keeps: true,
  async start(profile) {
    const note = join(profile, 'WebDriverBiDiServer.json');
    rmSync(note, { force: true });
    // A desk without a touch screen is told of fingers too.
    writeFileSync(join(profile, 'user.js'), 'user_pref("dom.w3c_touch_events.enabled", 1);\n');
    const child = begin(firefoxPath, ['--headless', '--no-remote', '--remote-debugging-port=0', '--profile', profile], {
      MOZ_CRASHREPORTER_DISABLE: '1',
    });
    const { ws_port: port } = await patiently(() => JSON.parse(readFileSync(note, 'utf8')) as { ws_port: number }, 'Firefox');
    // Node 20 has no WebSocket of its own; the one that the other browser tests speak through is at hand.
    const { ws: Socket } = createRequire(import.meta.url)('playwright-core/lib/utilsBundle') as { ws: typeof WebSocket };
    const socket = new Socket(`ws://127.0.0.1:${port}/session`);
    await new Promise((resolve, reject) => {
      socket.addEventListener('open', resolve);
      socket.addEventListener('error', reject);
    });
    const waiting = new Map<number, { resolve(value: never): void; reject(error: Error): void }>();
    socket.addEventListener('message', ({ data }) => {
      const said = JSON.parse(String(data)) as { id?: number; type: string; result?: unknown; error?: string; message?: string };
      const one = waiting.get(said.id ?? -1);
      waiting.delete(said.id ?? -1);
      if (said.type === 'success') one?.resolve(said.result as never);
      else if (said.type === 'error') one?.reject(new Error(`${said.error}: ${said.message}`));
    });
    let asked = 0;
    const ask = <T>(method: string, params: object = {}): Promise<T> =>
      new Promise<T>((resolve, reject) => {
        waiting.set(++asked, { resolve, reject });
        socket.send(JSON.stringify({ id: asked, method, params }));
      });
    await ask('session.new', { capabilities: {} });
    const { contexts } = await ask<{ contexts: { context: string }[] }>('browsingContext.getTree');
    const [{ context }] = contexts;
    await ask('browsingContext.setViewport', { context, viewport: benchSize });
    return {
      go: async (url) => void (await ask('browsingContext.navigate', { context, url, wait: 'complete' })),
      async look<T>(expression: string) {
        const { result, exceptionDetails } = await ask<{ result?: { value?: string }; exceptionDetails?: { text: string } }>(
          'script.evaluate',
          {
            expression: `(async () => JSON.stringify(await (${expression})))()`,
            target: { context },
            awaitPromise: true,
          },
        );
        if (exceptionDetails) throw new Error(exceptionDetails.text);
        return JSON.parse(result?.value ?? 'null') as T;
      },
      picture: async () => Buffer.from((await ask<{ data: string }>('browsingContext.captureScreenshot', { context })).data, 'base64'),
      resize: async (width, height) => void (await ask('browsingContext.setViewport', { context, viewport: { width, height } })),
      fingers: true,
      touch: async (ways) => void (await ask('input.performActions', { context, actions: fingers(ways) })),
      kill: () => gone(child),
    };
  },
};

/** WebKit over WebDriver (W3C), on a screen that nobody sees. What it keeps in a session that is driven dies with it. */
const webkit: Engine = {
  name: 'WebKit',
  installed: webkitPath !== undefined && existsSync('/usr/bin/WebKitWebDriver') && existsSync('/usr/bin/Xvfb'),
  keeps: false,
  async start() {
    const display = `:${90 + (process.pid % 500)}`;
    const screen = begin('/usr/bin/Xvfb', [display, '-screen', '0', '1440x1300x24', '-nolisten', 'tcp']);
    await patiently(() => existsSync(`/tmp/.X11-unix/X${display.slice(1)}`), 'The screen');
    const port = await freePort();
    const driver = begin('/usr/bin/WebKitWebDriver', [`--port=${port}`], {
      DISPLAY: display,
      WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
      LIBGL_ALWAYS_SOFTWARE: '1',
    });
    const send = async <T>(method: string, path: string, body?: object): Promise<T> => {
      const response = await fetch(`http://127.0.0.1:${port}${path}`, {
        method,
        headers: { 'Content-Type': 'application/json' },
        ...(body ? { body: JSON.stringify(body) } : {}),
      });
      const { value } = (await response.json()) as { value: T & { error?: string; message?: string } };
      if (value?.error !== undefined) throw new Error(`${value.error}: ${value.message}`);
      return value;
    };
    await patiently(() => send<{ ready: boolean }>('GET', '/status').then((s) => s.ready), 'WebKit');
    const { sessionId } = await send<{ sessionId: string }>('POST', '/session', {
      capabilities: {
        alwaysMatch: { browserName: 'MiniBrowser', 'webkitgtk:browserOptions': { binary: webkitPath, args: ['--automation'] } },
      },
    });
    const at = `/session/${sessionId}`;
    await send('POST', `${at}/window/rect`, benchSize);
    return {
      go: async (url) => void (await send('POST', `${at}/url`, { url })),
      async look<T>(expression: string) {
        const [text, wrong] = await send<[string | null, string | null]>('POST', `${at}/execute/async`, {
          script: `const done = arguments[0]; (async () => JSON.stringify(await (${expression})))().then((t) => done([t ?? null, null]), (e) => done([null, String(e)]));`,
          args: [],
        });
        if (wrong !== null) throw new Error(wrong);
        return JSON.parse(text ?? 'null') as T;
      },
      picture: async () => Buffer.from(await send<string>('GET', `${at}/screenshot`), 'base64'),
      resize: async (width, height) => void (await send('POST', `${at}/window/rect`, { width, height })),
      fingers: false,
      touch: async (ways) => void (await send('POST', `${at}/actions`, { actions: fingers(ways) })),
      async kill() {
        await send('DELETE', at).catch(() => undefined);
        await gone(driver);
        await gone(screen);
      },
    };
  },
};

export const engines: readonly Engine[] = [firefox, webkit];
