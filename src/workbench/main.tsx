import './style/index.css';
import { render } from 'preact';
import { ProblemError, problem } from '../core/problem.ts';
import { App } from './shell/App.tsx';
import { listenToKeys } from './shell/keys.ts';
import { createBench } from './store/bench.ts';
import { exampleFiles } from './store/example.ts';
import { openKeeper } from './store/keep.ts';
import { keepSaved } from './store/keeping.ts';
import { holdBench } from './store/lock.ts';
import { startBench } from './store/start.ts';
import { createClient } from './worker/client.ts';
import { words } from './words/index.ts';

const client = createClient(() => new Worker(new URL('./worker/worker.ts', import.meta.url), { type: 'module' }));
const bench = createBench(client);
const keeper = openKeeper();
const keeping = keepSaved(bench, keeper, holdBench());

render(<App bench={bench} keeping={keeping} keeper={keeper} starting={start()} />, document.getElementById('bench')!);
listenToKeys(bench, keeping);
void exampleFiles().catch(() => undefined);

async function start(): Promise<void> {
  try {
    await startBench(bench, keeping, keeper, location.search);
  } catch (error) {
    bench.refuse(error instanceof ProblemError ? error.problems
      : [problem('error', 'cannot-start', 'Laydown', words().shell.wentWrong, error instanceof Error ? error.message : String(error))]);
  }
}
