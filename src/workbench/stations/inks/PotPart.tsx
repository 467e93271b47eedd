import type { InkPartProps } from './state.ts';

export function PotPart({ bench }: InkPartProps) {
  return <p>{bench.job.value?.title}</p>;
}
