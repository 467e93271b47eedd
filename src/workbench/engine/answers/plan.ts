import { picturesReady } from '../pictures.ts';
import { readyBundle, type Plan, type PlannedPaper } from '../../../core/plan/index.ts';
import { codeAreas } from '../../../core/print/index.ts';
import type { ShownPaper, ShownPlan } from '../protocol.ts';
import type { Work } from './room.ts';

const shown = new WeakMap<PlannedPaper, ShownPaper>();

/** The same paper is shown as the same object, so that it isn't sent twice. */
function showPaper(paper: PlannedPaper): ShownPaper {
  let result = shown.get(paper);
  if (!result) shown.set(paper, (result = { ...paper, overPicture: paper.overPicture !== null }));
  return result;
}

const counted = new WeakMap<Plan['codes'], Float64Array>();

export function showPlan(plan: Plan): ShownPlan {
  let areasMm2 = counted.get(plan.codes);
  if (!areasMm2) counted.set(plan.codes, (areasMm2 = codeAreas(plan.codes)));
  return { ...plan, papers: plan.papers.map(showPaper), areasMm2 };
}

export const recolourAnswer: Work<'recolour'> = async ({ job, paperId }, room) => {
  const quick = room.planner.recolour(job, paperId);
  room.quick = quick && quick.paper;
  return {
    answer: quick && {
      layers: quick.layers.map(({ id, name, run, inkId, strength, swatch }) => ({ id, name, run, inkId, strength, swatch })),
      paper: showPaper(quick.paper),
    },
    transfer: [],
  };
};

/** Pictures of earlier prints are not waited for: what is printed over them is not drawn yet. */
export const drawnAnswer: Work<'drawn'> = async ({ job, attachments }, room) => {
  await room.ready;
  if (attachments) room.attachments = room.knownBytes(attachments);
  return { answer: room.planner.drawn({ job, attachments: room.attachments }), transfer: [] };
};

export const planAnswer: Work<'plan'> = async (ask, room, task) => {
  await room.ready;
  if (ask.attachments) room.attachments = room.knownBytes(ask.attachments);
  if (ask.job.papers.some((paper) => paper.printed)) await picturesReady();
  const bundle = await readyBundle({ job: ask.job, attachments: room.attachments });
  const plan = room.planner.plan(bundle, (share, note) => task.report(share, note));
  room.last = { job: ask.job, plan };
  room.quick = null;
  const { parcel, transfer } = room.packer.pack(showPlan(plan));
  return { answer: parcel, transfer };
};
