import { createCanvas } from '@napi-rs/canvas';
import { encode as encodePng } from 'fast-png';
import { zlibSync } from 'fflate';
import jpegJs from 'jpeg-js';
import { readdirSync, readFileSync } from 'node:fs';
import { readJob, writeJobFile, type JobBundle } from '../../src/core/job/index.ts';
import { indexedPng } from '../../src/packet/files/png.ts';

/** Formats that others' files come in. */
export const formats = ['cgats', 'cxf', 'csv', 'svg', 'dxf', 'png', 'jpeg', 'webp', 'tiff', 'icc', 'laydown'] as const;
export type Format = (typeof formats)[number];
export const isText = (format: Format): boolean => ['cgats', 'cxf', 'csv', 'svg', 'dxf'].includes(format);

const file = (path: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../${path}`, import.meta.url)));
const rgba = (w: number, h: number): Uint8Array =>
  Uint8Array.from({ length: w * h * 4 }, (_, i) => (i % 4 === 3 ? 255 : (i * 7 + ((i / (w * 4)) | 0) * 3) % 256));

export function tidePool(): JobBundle {
  const folder = new URL('../../examples/tide-pool/', import.meta.url);
  return readJob(new Map(readdirSync(folder).map((name) => [name, new Uint8Array(readFileSync(new URL(name, folder)))])));
}

/** Sound files of each format, small, of several kinds where a format has several. */
export async function samples(): Promise<Readonly<Record<Format, readonly Uint8Array[]>>> {
  const text = new TextEncoder();
  const profile = file('test/outside/data/srgb.icc');
  const jpeg = new Uint8Array(jpegJs.encode({ data: rgba(96, 64), width: 96, height: 64 }, 85).data);
  const canvas = createCanvas(96, 64);
  const context = canvas.getContext('2d');
  context.fillStyle = '#c03020';
  context.fillRect(10, 10, 50, 30);
  return {
    cgats: [
      file('test/outside/data/proof-spectra.cgats.txt').slice(0, 60_000),
      file('test/outside/data/offset-sc.cgats.txt').slice(0, 40_000),
    ],
    cxf: [text.encode(cxf)],
    csv: [text.encode('name;L;a;b\nkelp;40,5;-20;12\nwater;60;-8;-30\n'), text.encode('name,380,390,400\nx,0.1,0.2,0.3\n')],
    svg: readdirSync(new URL('../../examples/tide-pool/', import.meta.url))
      .filter((name) => name.endsWith('.svg'))
      .map((name) => file(`examples/tide-pool/${name}`)),
    dxf: [text.encode(dxf)],
    png: [
      encodePng({ width: 40, height: 30, channels: 4, data: rgba(40, 30) }),
      encodePng({ width: 20, height: 20, channels: 3, depth: 16, data: Uint16Array.from({ length: 1200 }, (_, i) => (i * 997) & 65535) }),
      indexedPng(
        {
          width: 30,
          height: 20,
          data: Uint8Array.from({ length: 600 }, (_, i) => i % 9),
          palette: Array.from({ length: 9 }, (_, i) => [i * 20, 9, 255 - i]),
        },
        0.1,
      ),
    ],
    jpeg: [jpeg, file('test/pictures/flower.jpg'), withProfile(profile)],
    webp: [new Uint8Array(await canvas.encode('webp', 80)), file('test/pictures/fish.webp')],
    tiff: [tiff(1), tiff(8), tiff(32773), tiff(8, 2)],
    icc: [profile],
    laydown: [writeJobFile(tidePool())],
  };
}

/** A small JPEG with a colour profile in it (ICC.1, annex B.4). */
export function withProfile(profile: Uint8Array): Uint8Array {
  const jpeg = new Uint8Array(jpegJs.encode({ data: rgba(16, 16), width: 16, height: 16 }, 85).data);
  const head = new TextEncoder().encode('ICC_PROFILE\0\u0001\u0001');
  const part = profile.subarray(0, 65_000),
    size = 2 + head.length + part.length;
  return Uint8Array.from([0xff, 0xd8, 0xff, 0xe2, size >> 8, size & 255, ...head, ...part, ...jpeg.subarray(2)]);
}

/** A grey or RGB picture in strips, plain, deflated or in PackBits. */
function tiff(packing: 1 | 8 | 32773, predictor = 1): Uint8Array {
  const [width, height] = [48, 32];
  const rows = Uint8Array.from({ length: width * height * 3 }, (_, i) => (i * 5) % 256);
  const packed =
    packing === 8
      ? zlibSync(rows)
      : packing === 1
        ? rows
        : Uint8Array.from({ length: rows.length * 2 }, (_, i) => (i % 2 ? rows[i >> 1] : 0));
  const entries: readonly (readonly [number, number, number, number])[] = [
    [256, 3, 1, width],
    [257, 3, 1, height],
    [258, 3, 1, 8],
    [259, 3, 1, packing],
    [262, 3, 1, 2],
    [273, 4, 1, 8 + 2 + 11 * 12 + 4],
    [274, 3, 1, 1],
    [277, 3, 1, 3],
    [278, 3, 1, height],
    [279, 4, 1, packed.length],
    [317, 3, 1, predictor],
  ];
  const out = new Uint8Array(8 + 2 + entries.length * 12 + 4 + packed.length);
  const view = new DataView(out.buffer);
  out.set([0x49, 0x49, 42, 0, 8]);
  view.setUint16(8, entries.length, true);
  entries.forEach(([tag, kind, count, value], i) => {
    view.setUint16(10 + i * 12, tag, true);
    view.setUint16(12 + i * 12, kind, true);
    view.setUint32(14 + i * 12, count, true);
    view.setUint32(18 + i * 12, value, true);
  });
  out.set(packed, out.length - packed.length);
  return out;
}

const cxf = `<?xml version="1.0"?><cc:CxF xmlns:cc="http://colorexchangeformat.com/CxF3-core"><cc:Resources><cc:ObjectCollection><cc:Object ObjectType="Target" Name="kelp" Id="1"><cc:ColorValues><cc:ReflectanceSpectrum ColorSpecification="s" StartWL="380">${Array.from({ length: 36 }, (_, i) => (0.1 + i / 60).toFixed(4)).join(' ')}</cc:ReflectanceSpectrum></cc:ColorValues></cc:Object></cc:ObjectCollection><cc:ColorSpecificationCollection><cc:ColorSpecification Id="s"><cc:MeasurementSpec><cc:MeasurementType>Spectrum_Reflectance</cc:MeasurementType><cc:WavelengthRange StartWL="380" Increment="10"/></cc:MeasurementSpec></cc:ColorSpecification></cc:ColorSpecificationCollection></cc:Resources></cc:CxF>`;

const pairs = (...all: readonly (readonly [number, string | number])[]): string =>
  all.map(([code, value]) => `${code}\n${value}\n`).join('');
const dxf =
  pairs(
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$INSUNITS'],
    [70, 4],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'BLOCKS'],
    [0, 'BLOCK'],
    [2, 'leaf'],
    [10, 0],
    [20, 0],
  ) +
  pairs([0, 'CIRCLE'], [10, 5], [20, 5], [40, 4], [0, 'ENDBLK'], [0, 'ENDSEC'], [0, 'SECTION'], [2, 'ENTITIES']) +
  pairs([0, 'LWPOLYLINE'], [70, 1], [10, 0], [20, 0], [10, 40], [20, 0], [42, 0.4], [10, 40], [20, 30], [10, 0], [20, 30]) +
  pairs([0, 'INSERT'], [2, 'leaf'], [10, 60], [20, 0], [70, 4], [71, 3], [44, 12], [45, 12], [0, 'SPLINE'], [70, 1], [71, 3]) +
  pairs(
    ...[0, 0, 0, 0, 1, 2, 3, 3, 3, 3].map((k) => [40, k] as const),
    ...[0, 10, 20, 30, 20, 0].flatMap((v, i) => [[10, v + 70] as const, [20, i * 7] as const]),
  ) +
  pairs([0, 'ENDSEC'], [0, 'EOF']);
