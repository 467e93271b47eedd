import type { Line } from './record.ts';
export async function hardestSheet(_lines: readonly Line[], _file: string): Promise<void> {}
