import type { InkPartProps } from './state.ts';

export function WantedPart({ bench }: InkPartProps) {
  return <p>{bench.job.value?.title}</p>;
}
