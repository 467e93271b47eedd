import { signal } from '@preact/signals';
import { problem } from '../../../../core/problem.ts';
import { name as asName, say } from '../../../../words/one-language.ts';
import type { Bench } from '../../../store/bench.ts';
import { nameOf } from './bring.ts';

export interface Photograph {
  readonly id: number;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly url: string;
}

/** The photograph being traced; null when none is. */
export const photograph = signal<Photograph | null>(null);
let photographs = 0;
const most = 200_000_000;

export async function takePhotograph(bench: Bench, file: File): Promise<void> {
  if (file.size > most)
    return bench.refuse([
      problem(
        'error',
        'picture-too-large',
        say('where.file', { file: asName(file.name) }),
        say('page.largerThan', { megabytes: most / 1e6 }),
        say('page.smallerPhotograph'),
      ),
    ]);
  const bytes = new Uint8Array(await file.arrayBuffer());
  leavePhotograph();
  photograph.value = { id: ++photographs, name: nameOf(file.name), bytes, url: URL.createObjectURL(file) };
}

export function leavePhotograph(): void {
  if (photograph.value) URL.revokeObjectURL(photograph.value.url);
  photograph.value = null;
}

/** What the thing lies on, which gives its size. */
export type Kind = 'a4' | 'letter' | 'board' | 'scan' | 'mask';
export const kinds: readonly Kind[] = ['a4', 'letter', 'board', 'scan', 'mask'];
