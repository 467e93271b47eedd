import type { Job, JobLayer } from '../../core/job/index.ts';

/** Small pure edits of a Job that several stations use. Each gives a new Job sharing every part it did not touch. */

export function withLayer(job: Job, id: string, change: Partial<JobLayer>): Job {
  return { ...job, layers: job.layers.map((layer) => (layer.id === id ? { ...layer, ...change } : layer)) };
}

/** Moves a layer to another place in the laydown; 0 is printed first. */
export function moveLayer(job: Job, id: string, to: number): Job {
  const from = job.layers.findIndex((layer) => layer.id === id);
  const place = Math.max(0, Math.min(job.layers.length - 1, to));
  if (from < 0 || from === place) return job;
  const layers = [...job.layers];
  layers.splice(place, 0, ...layers.splice(from, 1));
  return { ...job, layers };
}

/** What an open layer is tried in; nothing of it is in the Job until it is kept. */
export type Trials = ReadonlyMap<string, string>;

export function withTrials(job: Job, trials: Trials): Job {
  if (trials.size === 0) return job;
  return {
    ...job,
    layers: job.layers.map((layer) => (layer.ink === null && trials.has(layer.id) ? { ...layer, ink: trials.get(layer.id)! } : layer)),
  };
}
