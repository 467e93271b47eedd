import { Worker, type ResourceLimits } from 'node:worker_threads';
import { codeFolder } from '../code-folder.ts';

/** A thread of this program's own. The same file before and after it is compiled; before, the thread first has to learn how to read it. */
export function startThread(name: string, resourceLimits?: ResourceLimits): Worker {
  const built = new URL(`cli/threads/${name}.js`, codeFolder);
  if (!import.meta.url.endsWith('.ts')) return new Worker(built, { resourceLimits });
  const [reader, file] = [import.meta.resolve('tsx/esm/api'), built.href.replace(/js$/, 'ts')].map((url) => JSON.stringify(url));
  const code = `import(${reader}).then(({ register }) => { register(); return import(${file}); })`;
  return new Worker(code, { eval: true, execArgv: [], resourceLimits });
}
