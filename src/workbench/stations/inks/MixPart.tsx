import type { InkPartProps } from './state.ts';

export function MixPart({ bench }: InkPartProps) {
  return <p>{bench.job.value?.title}</p>;
}
