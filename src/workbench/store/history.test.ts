import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { step } from './words.ts';
import { begin, everywhere, record, redo, settle, undo } from './history.ts';

const named = step('strength', 'Kelp');

describe('undo and redo', () => {
  test('a drag of the slider is one step; letting go and dragging again is another', () => {
    let h = begin(0);
    for (const v of [1, 2, 3]) h = record(h, v, named, 'strength:kelp');
    h = record(settle(h), 4, named, 'strength:kelp');
    expect(undo(h).now.state).toBe(3);
    expect(undo(undo(h)).now.state).toBe(0);
    expect(undo(undo(undo(h))).now.state).toBe(0);
  });

  test('whatever is undone comes back in the same order, until something new is done', () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { minLength: 1, maxLength: 30 }), fc.nat(40), (states, times) => {
        let h = begin(-1);
        for (const s of states) h = record(h, s, named);
        let back = h;
        for (let i = 0; i < times; i++) back = undo(back);
        expect(back.now.state).toBe(times >= states.length ? -1 : [-1, ...states][states.length - times]);
        let again = back;
        for (let i = 0; i < times; i++) again = redo(again);
        expect(again.now.state).toBe(h.now.state);
        expect(record(back, 99, named).future).toEqual([]);
      }),
    );
  });

  test('a fact is carried through all moments: undo and redo neither name it nor take it away', () => {
    let h = record(record(begin({ a: 0, fact: '' }), { a: 1, fact: '' }, named), { a: 2, fact: '' }, named);
    h = everywhere(undo(h), (s) => ({ ...s, fact: 'pulled' }));
    for (const moment of [undo(h), h, redo(h)]) expect(moment.now.state.fact).toBe('pulled');
    expect([undo(h).now.state.a, h.now.state.a, redo(h).now.state.a]).toEqual([0, 1, 2]);
  });
});
