import { settleProblems } from '../../core/job/index.ts';
import type { Problem } from '../../core/problem.ts';
import { Cancelled, type Task } from '../../core/task.ts';
import { answers, createRoom } from './answers/index.ts';
import { breathe } from './breathe.ts';
import { faultsOf } from './faults.ts';
import { picturesReady } from './pictures.ts';
import type { FromWorker, Question, ToWorker } from './protocol.ts';

/** The one worker: owns the planner, answers what the page asks (protocol.ts), one question after the other. */
const scope = self as unknown as DedicatedWorkerGlobalScope;
const stopped = new Set<number>();
const room = createRoom();
void picturesReady();
let line: Promise<void> = Promise.resolve();

function taskOf(id: number): Task {
  return {
    report: (share, note) => scope.postMessage({ id, kind: 'progress', share, note } satisfies FromWorker),
    async pause() {
      await breathe();
      if (stopped.has(id)) throw new Cancelled();
    },
  };
}

scope.onmessage = (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  if (message.question === 'stop') {
    stopped.add(message.id);
    return;
  }
  line = line.then(() => respond(message));
};

async function respond(message: Exclude<ToWorker, { question: 'stop' }>): Promise<void> {
  const { id, question, ask } = message;
  const send = (reply: FromWorker, transfer: Transferable[] = []): void => scope.postMessage(reply, transfer);
  // The time that a question may take begins now, not while it waited in line.
  if (question === 'openJob' || question === 'drawing' || question === 'trace') send({ id, kind: 'progress', share: 0 });
  try {
    if (stopped.has(id)) throw new Cancelled();
    const work = answers[question] as (
      ask: unknown,
      room: ReturnType<typeof createRoom>,
      task: Task,
    ) => ReturnType<(typeof answers)[typeof question]>;
    const { answer, transfer } = await work(ask, room, taskOf(id));
    send({ id, kind: 'answer', answer }, transfer);
  } catch (error) {
    if (error instanceof Cancelled) send({ id, kind: 'stopped' });
    else send({ id, kind: 'failed', problems: placed(faultsOf(error), question) });
  } finally {
    stopped.delete(id);
  }
}

/** Questions about another job than the one on the bench. */
const ofOthers: readonly Question[] = ['openJob', 'saveJob', 'otherPlan'];

/** The problems with their places as the job on the bench calls them: the ink of run 1 (Sky). */
function placed(problems: readonly Problem[], question: Question): readonly Problem[] {
  return room.last && !ofOthers.includes(question) ? settleProblems(problems, room.last.job) : problems;
}
