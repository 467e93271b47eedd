/**
 * The words of a test (`describe`, `test`, `expect`), for tests that run again and again in one process. The expectations are vitest's own.
 * Not here: hooks, fake clocks, snapshots. Tests of formulas need none.
 */
import { ASYMMETRIC_MATCHERS_OBJECT, chai, getState, JestAsymmetricMatchers, JestChaiExpect, JestExtend, setState } from '@vitest/expect';

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = (value, message) => chai.expect(value, message);
Object.assign(expect, chai.expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);
expect.getState = () => getState(expect);
expect.setState = (state) => setState(state, expect);
setState({ assertionCalls: 0 }, expect);

const around = [];

export function describe(name, body) {
  around.push(name);
  body();
  around.pop();
}

export function test(name, second, third) {
  const body = typeof second === 'function' ? second : third;
  // Where they are gathered: name and what to do.
  globalThis.__formulaTests.push({ name: [...around, name].join(' '), body });
}

/** The row stands in the name, so that each has a name of its own. */
const each = (make) => (rows) => (name, body, options) => {
  const act = typeof body === 'function' ? body : options;
  rows.forEach((row, i) => make(`${name} (row ${i + 1})`, () => act(...(Array.isArray(row) ? row : [row]))));
};
test.each = each(test);
describe.each = each(describe);
export const it = test;
