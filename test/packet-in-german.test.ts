import { beforeAll, expect, test } from 'vitest';
import { prepare, readFonts } from '../src/cli/assets.ts';
import { readJobAt } from '../src/cli/folder.ts';
import { createPlanner, readyBundle, type Plan, type ReadyBundle } from '../src/core/plan/index.ts';
import { makePacket, type PacketFile } from '../src/packet/index.ts';
import { speechOf } from '../src/workbench/words/core/speech.ts';
import { pulled } from './browser/pulled.ts';

const german = speechOf('de')!;
const planner = createPlanner();
let bundle: ReadyBundle;
let first: Plan;
beforeAll(async () => {
  await prepare();
  bundle = await readyBundle(readJobAt(new URL('../examples/tide-pool', import.meta.url).pathname));
  first = planner.plan(bundle);
});

const english =
  /\b(?:the|of|is|are|with|for|to|that|it|on|by|from|or|at|be|not|no|only|sheets?|ink|layer|stencil|screen|press|run|window|piece)\b/i;

/** The packet, and everything that was drawn on it in German, the job's own words set aside. */
async function inGerman(
  from: ReadyBundle,
  plan: Plan,
  page: 'a4' | 'letter',
): Promise<{ files: PacketFile[]; left: string[]; drawn: number }> {
  const own: string[] = ['smeared'];
  JSON.stringify([from.job, plan.edition.counted], (_, value: unknown) => {
    if (typeof value === 'string' && value.length > 2) own.push(value);
    return value;
  });
  own.sort((a, b) => b.length - a.length);
  const drawn = new Map<string, string>();
  const told = (text: string): string => {
    const said = german.told(text);
    drawn.set(text, said);
    return said;
  };
  const files = await makePacket(from, plan, { fonts: readFonts(), printer: { page, marginMm: 12 }, speech: { language: 'de', told } });
  const left = [...drawn].filter(
    ([, said]) =>
      english.test(own.reduce((text, word) => text.replaceAll(word, '·'), said)) &&
      !/: [a-z]+(?:\[\d+\])?(?:\.\w+)+$|laydown register/.test(said),
  );
  return { files, left: left.map(([text, said]) => `${text} → ${said}`), drawn: drawn.size };
}

test('the packet of tide-pool is German on every page, within its margins', async () => {
  const { files, left, drawn } = await inGerman(bundle, first, 'a4');
  expect(drawn).toBeGreaterThan(300);
  expect(left).toEqual([]);
  expect(Buffer.from(files[0].bytes).subarray(0, 5).toString()).toBe('%PDF-');
}, 60_000);

test('and so it is once all is counted, on the other paper', async () => {
  const counted = await readyBundle(pulled());
  const { left } = await inGerman(counted, planner.plan(counted), 'letter');
  expect(left).toEqual([]);
}, 60_000);
