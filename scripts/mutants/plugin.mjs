/**
 * Runs tests of formulas for Stryker inside one process: a mutant is switched on, its tests run, and that is milliseconds, where a start of
 * vitest is a second. Files are read through Vite as vitest does it.
 */
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { commonTokens, declareClassPlugin, declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { determineHitLimitReached, DryRunStatus, TestStatus, toMutantRunResult } from '@stryker-mutator/api/test-runner';
import fc from 'fast-check';
import { createServer, createServerModuleRunner } from 'vite';
import { changeNumbers } from './numbers.mjs';

changeNumbers();

/** Properties look at fewer cases here than in the tests: what they would notice they notice soon. */
const numRuns = 20;

class FormulaRunner {
  static inject = [commonTokens.options];
  #include;
  #files = [];
  #tests = new Map();
  #stale = true;
  #stryker = (globalThis.__stryker__ ??= {});

  constructor(options) {
    this.#include = options.formulas.tests;
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    fc.configureGlobal({ numRuns, seed: 1, endOnFailure: true });
    this.#files = this.#include.map((file) => resolve(file));
    this.server = await createServer({
      configFile: false,
      root: process.cwd(),
      appType: 'custom',
      logLevel: 'error',
      server: { middlewareMode: true, hmr: false, watch: null, ws: false },
      optimizeDeps: { noDiscovery: true },
      resolve: { alias: { vitest: fileURLToPath(new URL('./vitest-words.mjs', import.meta.url)) } },
    });
    this.runner = createServerModuleRunner(this.server.environments.ssr, { hmr: false });
  }

  async dispose() {
    await this.runner?.close();
    await this.server?.close();
  }

  /** Reads test files anew, with all they import. */
  async #read(files) {
    this.runner.clearCache();
    const tests = [];
    for (const file of files) {
      globalThis.__formulaTests = [];
      await this.runner.import(file);
      // Numbered: two tables of cases may bear one name.
      tests.push(...globalThis.__formulaTests.map((test, i) => ({ ...test, id: `${file}#${i} ${test.name}`, file })));
    }
    return new Map(tests.map((test) => [test.id, test]));
  }

  async dryRun() {
    const stryker = this.#stryker;
    stryker.activeMutant = undefined;
    stryker.currentTestId = undefined;
    stryker.mutantCoverage = { static: {}, perTest: {} };
    this.#tests = await this.#read(this.#files);
    this.#stale = false;
    const tests = [];
    for (const test of this.#tests.values()) {
      stryker.currentTestId = test.id;
      tests.push(await run(test));
    }
    stryker.currentTestId = undefined;
    for (const { id, timeSpentMs } of tests) this.#tests.get(id).took = timeSpentMs;
    return { status: DryRunStatus.Complete, tests, mutantCoverage: stryker.mutantCoverage };
  }

  async mutantRun({ activeMutant, testFilter, sandboxFileName, hitLimit, mutantActivation }) {
    const stryker = this.#stryker;
    const alone = mutantActivation === 'static';
    stryker.activeMutant = undefined;
    stryker.hitCount = undefined;
    stryker.hitLimit = undefined;
    // Of a process that was started anew nothing is known: who reads which file is seen when all have been read once.
    if (this.#tests.size === 0 || (!alone && this.#stale)) this.#keepTimes(await this.#read(this.#files));
    stryker.hitCount = 0;
    stryker.hitLimit = hitLimit;
    stryker.activeMutant = activeMutant.id;
    let tests = this.#tests;
    const results = [];
    try {
      // What is worked out while a file is read must be read again.
      if (alone) {
        this.#stale = true;
        tests = await this.#read(this.#readersOf(sandboxFileName));
      }
      const wanted = testFilter ? testFilter.map((id) => tests.get(id)).filter(Boolean) : [...tests.values()];
      wanted.sort((a, b) => (this.#tests.get(a.id)?.took ?? 0) - (this.#tests.get(b.id)?.took ?? 0));
      for (const test of wanted) {
        const result = await run(test);
        results.push(result);
        if (result.status === TestStatus.Failed) break;
      }
    } catch (error) {
      results.push({ id: 'read', name: 'reading the files', status: TestStatus.Failed, failureMessage: String(error), timeSpentMs: 0 });
    }
    const outcome = determineHitLimitReached(stryker.hitCount, stryker.hitLimit) ?? { status: DryRunStatus.Complete, tests: results };
    stryker.activeMutant = undefined;
    stryker.hitLimit = undefined;
    return toMutantRunResult(outcome);
  }

  #keepTimes(tests) {
    for (const test of tests.values()) test.took = this.#tests.get(test.id)?.took;
    this.#tests = tests;
    this.#stale = false;
  }

  /** Test files that import a file, by however many steps. */
  #readersOf(file) {
    const graph = this.server.environments.ssr.moduleGraph;
    const seen = new Set();
    const queue = [...(graph.getModulesByFile(resolve(file)) ?? [])];
    for (let module = queue.pop(); module; module = queue.pop()) {
      if (seen.has(module)) continue;
      seen.add(module);
      queue.push(...module.importers);
    }
    const files = new Set([...seen].map((module) => module.file));
    return this.#files.filter((one) => files.has(one));
  }
}

async function run(test) {
  const from = performance.now();
  const end = (more) => ({ id: test.id, name: test.name, fileName: test.file, timeSpentMs: performance.now() - from, ...more });
  try {
    await test.body();
    return end({ status: TestStatus.Success });
  } catch (error) {
    return end({ status: TestStatus.Failed, failureMessage: error?.message ?? String(error) });
  }
}

/** How many digits are said is no formula: the catalogues' tests hold what is read. */
const quantities = new Set(['figure', 'length', 'lengths', 'area', 'film', 'mass', 'share', 'asShare', 'deltaE']);
const digits = {
  shouldIgnore(path) {
    const call = path.parentPath;
    const says = call?.isCallExpression() && quantities.has(call.node.callee.name) && path.listKey === 'arguments' && path.key > 0;
    return says && (path.isNumericLiteral() || path.isBooleanLiteral()) ? 'digits that are said' : undefined;
  },
};

export const strykerPlugins = [
  declareClassPlugin(PluginKind.TestRunner, 'formulas', FormulaRunner),
  declareValuePlugin(PluginKind.Ignore, 'digits', digits),
];
export const strykerValidationSchema = {
  properties: { formulas: { type: 'object', properties: { tests: { type: 'array', items: { type: 'string' } } } } },
};
