import type { InkPartProps } from './state.ts';

export function OrderPart({ bench }: InkPartProps) {
  return <p>{bench.job.value?.title}</p>;
}
