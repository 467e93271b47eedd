import { parentPort } from 'node:worker_threads';
import { doErrand, type Errand } from '../../core/separate/index.ts';

parentPort?.on('message', (errand: Errand) => {
  // An error that is not caught here reaches the one who asked as the thread's own.
  void doErrand(errand).then((done) => parentPort?.postMessage(done));
});
