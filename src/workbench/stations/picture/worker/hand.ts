import { doErrand, type Errand, type ErrandDone } from '../../../../core/separate/index.ts';
import { Cancelled, type Task } from '../../../../core/task.ts';
import { breathe } from '../../../engine/breathe.ts';
import type { FromHand, ToHand } from './hands.ts';

/** A thread that does errands of a separation, one at a time; it is never sent the next one before it has answered. */
const scope = self as unknown as DedicatedWorkerGlobalScope;
const betweenBreathsMs = 40;
let stopped = false;

scope.onmessage = ({ data }: MessageEvent<ToHand>) => {
  if (data === 'stop') stopped = true;
  else void answered(data).then((answer) => scope.postMessage(answer));
};

/** Nothing when stopped, and when it went wrong: who asked then does it again and says what is wrong. */
async function answered(errand: Errand): Promise<FromHand> {
  stopped = false;
  let last = performance.now();
  const task: Task = {
    report() {},
    async pause() {
      if (performance.now() - last < betweenBreathsMs) return;
      await breathe();
      last = performance.now();
      if (stopped) throw new Cancelled();
    },
  };
  return doErrand(errand, task).catch((): ErrandDone | null => null);
}
