// Forty filled drawings of an open icon package go the whole way: form → cut → stencil → proof → cut sheet.
// Source of the drawings: npm package bootstrap-icons (MIT), icons/*-fill.svg.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, expect, test } from 'vitest';
import { prepare, readFonts } from '../../src/cli/assets.ts';
import { rasterize, readSvg } from '../../src/core/form/index.ts';
import { parseJob, type JobBundle } from '../../src/core/job/index.ts';
import { plan } from '../../src/core/plan/index.ts';
import { makePacket } from '../../src/packet/index.ts';

const icons = createRequire(import.meta.url)
  .resolve('bootstrap-icons/icons/0-circle-fill.svg')
  .replace(/[^/\\]+$/, '');
const filled = readdirSync(icons).filter((name) => name.endsWith('-fill.svg'));
// Spread over the alphabet, so that no family of drawings fills the sample.
const sample = Array.from({ length: 40 }, (_, i) => filled[Math.floor((i * filled.length) / 40)]);

function jobFor(name: string): JobBundle {
  const lab = (l: number, a: number, b: number) => ({ kind: 'lab', lab: [l, a, b] });
  return {
    job: parseJob({
      schemaVersion: 1,
      title: name,
      image: { widthMm: 120, heightMm: 120 },
      stencilMarginMm: 20,
      forms: [{ id: 'icon', name, drawing: name, widthMm: 96 }],
      cuts: [{ id: 'cut', name, material: 'film', parts: [{ form: 'icon', xMm: 60, yMm: 60 }] }],
      layers: [{ id: 'only', name: 'Only', cut: 'cut', side: 'window', ink: 'ink', bridgesBy: 'shortest' }],
      inks: [{ id: 'ink', name: 'Ink', from: 'one-ground', ground: lab(95, 0, 0), over: lab(40, 20, -30) }],
      papers: [{ id: 'white', name: 'White', reading: lab(95, 0, 0), widthMm: 160, heightMm: 160, count: 5 }],
    }),
    attachments: new Map([[name, new Uint8Array(readFileSync(icons + name))]]),
  };
}

beforeAll(() => prepare());

test.each(sample)('%s: packet made, certificate true, the cut sheet is the proof pixel by pixel', async (name) => {
  const bundle = jobFor(name);
  const made = plan(bundle);
  expect(made.problems.filter((p) => p.severity === 'error')).toEqual([]);
  const [layer] = made.layers;
  expect(layer.stencil.certificate.holds).toBe(true);

  const files = await makePacket(bundle, made, { fonts: readFonts(), printer: { page: 'a4', marginMm: 12 } });
  const sheet = files.find((f) => f.path === 'cut/only.svg')!;
  const svg = new TextDecoder().decode(sheet.bytes);
  expect(svg).toMatch(/width="[\d.]+mm"/);

  // What the sheet's knife lines leave open, read back from the file, against the proof's codes.
  const opening = readSvg(openingOf(svg), sheet.path);
  const { width, height, mmPerPx, data } = made.codes;
  const read = rasterize(opening.region, { originXMm: 0, originYMm: 0, mmPerPx, width, height });
  let different = 0;
  for (let i = 0; i < data.length; i++) if ((data[i] !== 0) !== (read[i] === 1)) different++;
  // Curves are fitted again within 0.1 mm: no more pixels may change than lie along so narrow a rim.
  const rimPx = (layer.stencil.knife.metres * 1000 * 0.1) / mmPerPx ** 2;
  expect(different).toBeLessThan(Math.max(40, rimPx * 0.5));
});

/** Keeps the knife lines of a cut sheet only; they are written in mm from the image's top left corner. */
function openingOf(svg: string): string {
  const path = /<g id="cut"[^>]*>\s*<path[^>]*\sd="([^"]+)"/.exec(svg);
  expect(path, 'the cut sheet has its knife lines in one path').not.toBeNull();
  return `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="120mm" viewBox="0 0 120 120"><path fill-rule="evenodd" d="${path![1]}"/></svg>`;
}
