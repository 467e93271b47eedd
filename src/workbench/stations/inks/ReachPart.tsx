import type { InkPartProps } from './state.ts';

export function ReachPart({ bench }: InkPartProps) {
  return <p>{bench.job.value?.title}</p>;
}
