import { say } from '../../../words/say.ts';
import { fail } from '../../problem.ts';

/** A step of the chain: turns a document of version `from` into one of version `from + 1`. Unknown fields pass through. */
export interface Migration {
  readonly from: number;
  readonly step: (document: Record<string, unknown>) => Record<string, unknown>;
}

/** Grows by one entry whenever `currentSchemaVersion` does. Version 1 is the first that shipped. */
export const migrations: readonly Migration[] = [];

/** Brings a raw document up to `target`. Throws `ProblemError` for a newer or unreadable version. */
export function migrate(
  document: Record<string, unknown>,
  target: number,
  chain: readonly Migration[] = migrations,
): Record<string, unknown> {
  const version = document['schemaVersion'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    fail('job-without-version', 'schemaVersion', say('job.withoutVersion'), say('job.addVersion', { version: target }));
  }
  if (version > target) {
    fail('job-newer', 'schemaVersion', say('job.newer', { version, most: target }), say('job.openWithNewer'));
  }
  let current = document;
  for (let v = version; v < target; v++) {
    const migration = chain.find((m) => m.from === v);
    if (!migration) fail('job-version-gap', 'schemaVersion', say('job.versionGap', { from: v, to: v + 1 }), say('job.openWithOlder'));
    current = { ...migration.step(current), schemaVersion: v + 1 };
  }
  return current;
}
