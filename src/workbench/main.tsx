import './style/index.css';
import { render } from 'preact';
import { App } from './shell/App.tsx';
import { listenToKeys } from './shell/keys.ts';
import { mindScreenKeys } from './shell/screen-keys.ts';
import { createBench } from './store/bench.ts';
import { keepOffline } from './engine/offline/install.ts';
import { exampleFiles } from './store/example.ts';
import { openKeeper } from './store/keep/keep.ts';
import { keepSaved } from './store/keep/keeping.ts';
import { holdBench } from './store/keep/lock.ts';
import { keepInSight, recallSight } from './store/keep/sighting.ts';
import { keepThumbs } from './shell/prints/thumbs.ts';
import { places } from './stations/index.ts';
import { pictureClient } from './stations/picture/state.ts';
import { shareCount } from './stations/press/pulling/share.ts';
import { whenRested } from './store/rested.ts';
import { startBench } from './store/start.ts';
import workerUrl from './engine/worker.ts?worker&url';
import { createClient } from './engine/client.ts';
import { fetchLanguages, rememberLanguage } from './store/keep/remember-language.ts';
import { faultsOf } from './engine/faults.ts';
import { words } from './store/words.ts';
import { bringAll } from './ui/later.tsx';

const spoken = rememberLanguage();
// The station in the address comes beside the language.
void places.find((place) => place.id === (location.hash.slice(1) || 'laydown'))?.view.load();
const recall = recallSight(workerUrl);
const client = createClient(() => new Worker(workerUrl, { type: 'module' }));
const bench = createBench(client);
const keeper = openKeeper();
const keeping = keepSaved(bench, keeper, holdBench());

let begun = (): void => undefined;
const started = new Promise<void>((done) => {
  begun = done;
});
const rested = started.then(() => whenRested(bench));
const offline = keepOffline(rested, async () => {
  await keeping.flush();
  const safe = keeping.isSafe();
  if (!safe) bench.announce(words().shell.saveFirst);
  return safe;
});

await spoken;
render(<App bench={bench} keeping={keeping} keeper={keeper} offline={offline} starting={start()} />, document.getElementById('bench')!);
listenToKeys(bench, keeping);
mindScreenKeys();
// A worker that had to be started anew has it all to fetch again.
client.onRestart(() => void whenRested(bench).then(bringRest));
// Nothing is asked of the network later: what the first view did without comes now.
void rested.then(async () => {
  pictureClient();
  bringRest();
  await Promise.all([fetchLanguages(), exampleFiles()]).catch(() => undefined);
  await bringAll();
});

function bringRest(): void {
  client.ask('rest', {}).catch(() => undefined);
}

async function start(): Promise<void> {
  try {
    await startBench(bench, keeping, keeper, location.search);
    await recall(bench);
    keepInSight(bench, keeping, workerUrl);
    keepThumbs(bench, keeping);
    shareCount(bench, location.search);
  } catch (error) {
    bench.refuse(faultsOf(error));
  } finally {
    begun();
  }
}
