import { Deflate } from 'fflate';
import { crc32 } from '../../core/numeric/index.ts';
import type { Film } from './rows.ts';

/** Deflates what it is given, a piece at a time (RFC 1951). A caller that has a quicker one than ours hands it in. */
export interface Press {
  push(bytes: Uint8Array): readonly Uint8Array[];
  end(): readonly Uint8Array[];
}
export type MakePress = () => Press;

const band = 256;

export type FilmFormat = 'png' | 'tiff' | 'pdf';

/** A film as a file of one bit a pixel, with its density. */
export function filmFile(film: Film, format: FilmFormat, press: MakePress = ownPress): Uint8Array {
  return format === 'png' ? filmPng(film, press) : format === 'tiff' ? filmTiff(film, press) : filmPdf(film, press);
}

/** All rows through the press, a band at a time; white is 1, as PNG and PDF have their greys, and before each row what filters it: nothing. */
function pressed(film: Film, press: MakePress, filtered: boolean): Uint8Array {
  const { layout, lineBytes, row } = film;
  const head = filtered ? 1 : 0;
  const to = zlibOf(press());
  const line = new Uint8Array(lineBytes);
  for (let from = 0; from < layout.height; from += band) {
    const rows = Math.min(band, layout.height - from);
    const block = new Uint8Array(rows * (lineBytes + head));
    for (let y = 0; y < rows; y++) {
      row(from + y, line);
      const at = y * (lineBytes + head) + head;
      for (let i = 0; i < lineBytes; i++) block[at + i] = line[i] ^ 255;
    }
    to.push(block);
  }
  return to.end();
}

/** ISO/IEC 15948: grey of one bit, pixels per metre. */
function filmPng(film: Film, press: MakePress): Uint8Array {
  const { width, height, pixelsPerMm } = film.layout;
  const perMetre = Math.round(pixelsPerMm * 1000);
  return joined([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk('IHDR', Uint8Array.of(...word(width), ...word(height), 1, 0, 0, 0, 0)),
    chunk('pHYs', Uint8Array.of(...word(perMetre), ...word(perMetre), 1)),
    chunk('IDAT', pressed(film, press, true)),
    chunk('IEND', new Uint8Array(0)),
  ]);
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const body = new Uint8Array(4 + data.length);
  body.set([...type].map((c) => c.charCodeAt(0)));
  body.set(data, 4);
  return joined([Uint8Array.of(...word(data.length)), body, Uint8Array.of(...word(crc32(body)))]);
}

/** TIFF 6.0, one bit, black is nought, one strip pressed by deflate (Adobe Photoshop TIFF Technical Notes: compression 8). Little-endian. */
function filmTiff(film: Film, press: MakePress): Uint8Array {
  const { width, height, pixelsPerMm } = film.layout;
  const data = pressed(film, press, false);
  const density = Math.round(pixelsPerMm * 25.4 * 1000);
  const tags: readonly (readonly [tag: number, type: 3 | 4 | 5, value: number])[] = [
    [256, 4, width],
    [257, 4, height],
    [258, 3, 1],
    [259, 3, 8],
    [262, 3, 1],
    [273, 4, 0],
    [277, 3, 1],
    [278, 4, height],
    [279, 4, data.length],
    [282, 5, density],
    [283, 5, density],
    [296, 3, 2],
  ];
  const ifd = 8,
    rationals = ifd + 2 + tags.length * 12 + 4,
    start = rationals + 16;
  const head = new DataView(new ArrayBuffer(start));
  head.setUint16(0, 0x4949, true);
  head.setUint16(2, 42, true);
  head.setUint32(4, ifd, true);
  head.setUint16(ifd, tags.length, true);
  tags.forEach(([tag, type, value], i) => {
    const at = ifd + 2 + i * 12;
    head.setUint16(at, tag, true);
    head.setUint16(at + 2, type, true);
    head.setUint32(at + 4, 1, true);
    if (type === 3) head.setUint16(at + 8, value, true);
    else if (type === 4) head.setUint32(at + 8, tag === 273 ? start : value, true);
    else {
      const where = rationals + (tag === 283 ? 8 : 0);
      head.setUint32(at + 8, where, true);
      head.setUint32(where, value, true);
      head.setUint32(where + 4, 1000, true);
    }
  });
  return joined([new Uint8Array(head.buffer), data]);
}

/** PDF 1.4 (ISO 32000-1), one page of the film's true size with one image of one bit. */
function filmPdf(film: Film, press: MakePress): Uint8Array {
  const { width, height, pixelsPerMm } = film.layout;
  const data = pressed(film, press, true);
  const points = (px: number): string => ((px / pixelsPerMm / 25.4) * 72).toFixed(3);
  const [w, h] = [points(width), points(height)];
  const draw = `q ${w} 0 0 ${h} 0 0 cm /Film Do Q`;
  const parts: Uint8Array[] = [];
  const offsets: number[] = [];
  let length = 0;
  const put = (bytes: Uint8Array | string): void => {
    const block = typeof bytes === 'string' ? Uint8Array.from(bytes, (c) => c.charCodeAt(0)) : bytes;
    parts.push(block);
    length += block.length;
  };
  const object = (n: number, body: string, stream?: Uint8Array): void => {
    offsets[n] = length;
    put(`${n} 0 obj\n${body}\n`);
    if (stream) {
      put('stream\n');
      put(stream);
      put('\nendstream\n');
    }
    put('endobj\n');
  };
  put('%PDF-1.4\n');
  object(1, '<< /Type /Catalog /Pages 2 0 R >>');
  object(2, '<< /Type /Pages /Kids [3 0 R] /Count 1 >>');
  object(3, `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${w} ${h}] /Resources << /XObject << /Film 5 0 R >> >> /Contents 4 0 R >>`);
  object(
    4,
    `<< /Length ${draw.length} >>`,
    Uint8Array.from(draw, (c) => c.charCodeAt(0)),
  );
  object(
    5,
    `<< /Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace /DeviceGray /BitsPerComponent 1 /Interpolate false ` +
      `/Filter /FlateDecode /DecodeParms << /Predictor 15 /Colors 1 /BitsPerComponent 1 /Columns ${width} >> /Length ${data.length} >>`,
    data,
  );
  const at = length;
  const entry = (n: number): string => `${String(offsets[n]).padStart(10, '0')} 00000 n \n`;
  put(
    `xref\n0 6\n0000000000 65535 f \n${[1, 2, 3, 4, 5].map(entry).join('')}trailer\n<< /Size 6 /Root 1 0 R >>\nstartxref\n${at}\n%%EOF\n`,
  );
  return joined(parts);
}

const word = (n: number): number[] => [(n >>> 24) & 255, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((sum, p) => sum + p.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

const ownPress: MakePress = () => {
  let parts: Uint8Array[] = [];
  const taken = (): Uint8Array[] => {
    const now = parts;
    parts = [];
    return now;
  };
  const deflate = new Deflate({ level: 1 }, (part) => parts.push(part));
  return {
    push(bytes) {
      deflate.push(bytes, false);
      return taken();
    },
    end() {
      deflate.push(new Uint8Array(0), true);
      return taken();
    },
  };
};

/** Deflated pieces with zlib's head and its sum around them (RFC 1950, Adler-32). */
function zlibOf(press: Press): { push(bytes: Uint8Array): void; end(): Uint8Array } {
  const parts: Uint8Array[] = [Uint8Array.of(0x78, 0x01)];
  let a = 1,
    b = 0;
  return {
    push(bytes) {
      for (let i = 0; i < bytes.length; ) {
        const end = Math.min(bytes.length, i + 3800);
        for (; i < end; i++) b += a += bytes[i];
        a %= 65521;
        b %= 65521;
      }
      parts.push(...press.push(bytes));
    },
    end() {
      parts.push(...press.end(), Uint8Array.of(b >> 8, b & 255, a >> 8, a & 255));
      return joined(parts);
    },
  };
}
