import type { InkPartProps } from './state.ts';

export function ShelfPart({ bench }: InkPartProps) {
  return <p>{bench.job.value?.title}</p>;
}
