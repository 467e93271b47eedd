import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createPacker, createUnpacker } from './parcel.ts';

describe('what the worker tells the page', () => {
  test('any plain data arrives as it was sent', () => {
    const data = fc.letrec((tie) => ({
      value: fc.oneof(
        { maxDepth: 4 },
        fc.integer(),
        fc.string(),
        fc.boolean(),
        fc.constant(null),
        fc.double(),
        fc.float64Array(),
        tie('list'),
        tie('record'),
      ),
      list: fc.array(tie('value')),
      record: fc.dictionary(fc.string(), tie('value'), { noNullPrototype: true }),
    })).value;
    fc.assert(
      fc.property(data, (value) => {
        const { parcel, transfer } = createPacker().pack(value);
        expect(createUnpacker().unpack(structuredClone(parcel, { transfer }))).toEqual(value);
      }),
      { examples: [[JSON.parse('{ "__proto__": { "toString": 1 } }')]] },
    );
  });

  test('a new strength sends the new colours only: stencils and codes stay the same objects', () => {
    const packer = createPacker();
    const page = createUnpacker();
    const send = (value: unknown): { got: unknown; bytes: number } => {
      const { parcel, transfer } = packer.pack(value);
      return { bytes: transfer.reduce((sum, b) => sum + b.byteLength, 0), got: page.unpack(structuredClone(parcel, { transfer })) };
    };
    interface Small {
      codes: Uint8Array;
      layers: { strength: number; stencil: { rings: Float64Array[] } }[];
    }
    const plan: Small = { codes: new Uint8Array(5000), layers: [{ strength: 0.5, stencil: { rings: [Float64Array.of(1, 2, 3)] } }] };
    const first = send(plan).got as Small;
    const second = send({ ...plan, layers: [{ ...plan.layers[0], strength: 0.6 }] });
    const got = second.got as Small;
    expect(second.bytes).toBe(0);
    expect(got.layers[0].strength).toBe(0.6);
    expect(got.codes).toBe(first.codes);
    expect(got.layers[0].stencil).toBe(first.layers[0].stencil);
    const third = send({ ...plan, codes: new Uint8Array(10) }).got as Small;
    expect(third.codes).toHaveLength(10);
    expect(third.layers[0].stencil).toBe(first.layers[0].stencil);
  });

  test('what is no longer part of the Plan is let go of, and comes anew when it returns', () => {
    const packer = createPacker();
    const page = createUnpacker();
    const ink = { k: Float64Array.of(1, 2) };
    const send = (value: unknown): unknown => page.unpack(structuredClone(packer.pack(value).parcel));
    send({ ink });
    const away = packer.pack({ ink: null }).parcel;
    expect(away.forget).toHaveLength(3);
    page.unpack(away);
    expect(send({ ink })).toEqual({ ink });
  });
});
