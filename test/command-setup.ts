import { vi } from 'vitest';

// What stands in when commands are called: the same for every file of tests about them, so that they share what is loaded.
vi.mock('../src/core/plan/index.ts', async (original) => (await import('./command.ts')).plannedOnce(original));
vi.mock('../src/cli/threads/thread.ts', async () => (await import('./command.ts')).builtThreads());
