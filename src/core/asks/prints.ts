import { foldLog, readLog } from '../edition/index.ts';
import type { Job, JobBundle } from '../job/index.ts';
import { countLogName } from '../plan/index.ts';

/** How far a print has come. */
export const printStages = ['planned', 'cut', 'printing', 'signed'] as const;
export type PrintStage = (typeof printStages)[number];

/** Signed once the record says how; printing from the first pull that was counted or marked; cut from the first stencil that was. */
export function stageOf({ job, attachments }: JobBundle): PrintStage {
  if (job.edition.record.signature) return 'signed';
  const log = attachments.get(countLogName);
  const pulled = log !== undefined && foldLog(readLog(new TextDecoder().decode(log)).events).runs.some((run) => run.sheets.length > 0);
  if (pulled || (job.done?.pulled.length ?? 0) > 0) return 'printing';
  return (job.done?.cut.length ?? 0) > 0 ? 'cut' : 'planned';
}

const countLogs = /^press-count(-\d+)?\.log$/;

/** The same print under another title, with nothing of it done yet: what was cut, mixed, counted and signed belongs to the first one. */
export function copyOfPrint({ job, attachments }: JobBundle, title: string): JobBundle {
  const plan: Job = { ...job, title, potLogs: [], edition: withoutRecord(job) };
  delete plan.done;
  delete plan.print;
  return {
    job: plan,
    attachments: new Map([...attachments].filter(([path]) => !countLogs.test(path))),
  };
}

/** Another print in the same studio: its inks, papers, screen, press and day are there, and nothing is drawn yet. */
export function nextPrint({ job, attachments }: JobBundle, title: string): JobBundle {
  const next: Job = {
    ...job,
    title,
    forms: [],
    cuts: [],
    layers: [],
    wanted: [],
    proofReadings: [],
    potLogs: [],
    edition: withoutRecord(job),
  };
  for (const field of ['print', 'done', 'picture', 'note'] as const) delete next[field];
  const text = JSON.stringify(next);
  return { job: next, attachments: new Map([...attachments].filter(([path]) => text.includes(JSON.stringify(path)))) };
}

/** An edition as it was wished for, before anything became of it. */
function withoutRecord({ edition }: Job): Job['edition'] {
  return { ...edition, record: {}, setApart: {} };
}
