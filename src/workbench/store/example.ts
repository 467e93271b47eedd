import type { Attachments } from '../engine/protocol.ts';

const urls = import.meta.glob<string>('../../../examples/tide-pool/*', { query: '?url', import: 'default', eager: true });
let files: Promise<Attachments> | undefined;

/** The example's files. Fetched with the page (main.tsx asks early), so that opening it asks the network for nothing. */
export function exampleFiles(): Promise<Attachments> {
  return (files ??= Promise.all(
    Object.entries(urls).map(async ([path, url]) => {
      const response = await fetch(url);
      return [path.split('/').at(-1)!, new Uint8Array(await response.arrayBuffer())] as const;
    }),
  ).then((pairs) => new Map(pairs)));
}
