import type { InkPartProps } from './state.ts';

export function LearnPart({ bench }: InkPartProps) {
  return <p>{bench.job.value?.title}</p>;
}
