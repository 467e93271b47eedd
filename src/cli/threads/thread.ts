import { Worker, type ResourceLimits } from 'node:worker_threads';

/** A thread of this program's own. The same file before and after it is compiled; before, the thread first has to learn how to read it. */
export function startThread(name: string, resourceLimits?: ResourceLimits): Worker {
  if (!import.meta.url.endsWith('.ts')) return new Worker(new URL(`./${name}.js`, import.meta.url), { resourceLimits });
  const [reader, file] = [import.meta.resolve('tsx/esm/api'), new URL(`./${name}.ts`, import.meta.url).href].map((url) =>
    JSON.stringify(url),
  );
  const code = `import(${reader}).then(({ register }) => { register(); return import(${file}); })`;
  return new Worker(code, { eval: true, execArgv: [], resourceLimits });
}
