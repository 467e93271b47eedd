import { deflateSync } from 'node:zlib';
import { prepare, readFonts } from '../src/cli/assets.ts';
import { readJobAt } from '../src/cli/disk/folder.ts';
import { plan, readyBundle } from '../src/core/plan/index.ts';
import { indexedPng } from '../src/packet/files/png.ts';
import { makePacket, packetParts } from '../src/packet/index.ts';
import { makePages } from '../src/packet/pages/index.ts';
import { newSetting } from '../src/packet/pages/ink/setting.ts';
import { openBook } from '../src/packet/pdf/book.ts';
import { proofImage } from '../src/packet/proof.ts';
import { quietTask } from '../src/core/task.ts';
import { medianMs, type BenchRow } from './row.ts';

export const title = 'The packet of tide-pool';

export async function run(): Promise<BenchRow[]> {
  await prepare();
  const bundle = await readyBundle(readJobAt('examples/tide-pool'));
  const made = plan(bundle);
  const fonts = readFonts();
  const once = { least: 3, most: 3 };
  const proof = proofImage(made, made.papers[0]);
  if (proof.kind !== 'indexed') throw new Error('the first paper of tide-pool carries no print');
  const { image } = proof;
  return [
    {
      name: 'whole packet, all files',
      medianMs: await medianMs(() => makePacket(bundle, made, { fonts, printer: { page: 'a4', marginMm: 12 } }), once),
    },
    {
      name: 'the PDF alone',
      medianMs: await medianMs(async () => {
        const book = await openBook(fonts, 210, 297, 'en');
        await makePages(newSetting({ book, bundle, plan: made, marginMm: 12, date: '', mark: '', language: 'en' }), quietTask, {
          parts: new Set(packetParts),
          cover: true,
          laydown: true,
        });
        await book.finish('tide-pool', '');
      }, once),
    },
    {
      name: `one proof as PNG, ${image.width} × ${image.height}`,
      medianMs: await medianMs(() => indexedPng(image, proof.mmPerPx)),
      rivalName: 'deflate of the same bytes by Node itself (native code)',
      rivalMs: await medianMs(() => deflateSync(image.data, { level: 3 })),
    },
  ];
}
