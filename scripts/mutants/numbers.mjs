/** Stryker changes operators and conditions, but no numbers, and a formula is half numbers: so each number is one mutant more. */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const require = createRequire(import.meta.url);
const core = createRequire(require.resolve('@stryker-mutator/core/package.json'));
const instrumenter = core.resolve('@stryker-mutator/instrumenter');
const { default: babel } = await import(pathToFileURL(createRequire(instrumenter).resolve('@babel/core')));
// The list of mutators is no part of its interface: should it move, this line says so.
const { allMutators } = await import(new URL('./mutators/mutate.js', pathToFileURL(instrumenter)));

/** A whole number goes up by one, nought to one, any other by a tenth. */
const changed = (value) => (Number.isInteger(value) ? value + 1 : Number((value * 1.1).toPrecision(12)));

export function changeNumbers() {
  if (allMutators.some((mutator) => mutator.name === 'Number')) return;
  allMutators.push({
    name: 'Number',
    *mutate(path) {
      if (!path.isNumericLiteral() || (path.parentPath.isObjectProperty() && path.key === 'key')) return;
      yield babel.types.numericLiteral(changed(path.node.value));
    },
  });
}
