import type { InkPartProps } from './state.ts';

export function AgainPart({ bench }: InkPartProps) {
  return <p>{bench.job.value?.title}</p>;
}
