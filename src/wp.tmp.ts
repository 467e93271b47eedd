import { takeJob, planOf } from './cli/load.ts';
const b = takeJob('examples/tide-pool');
for (let i = 0; i < 2; i++) {
  const t0 = performance.now();
  const c = process.cpuUsage();
  await planOf(b);
  const d = process.cpuUsage(c);
  console.log('plan', (performance.now() - t0).toFixed(0), 'cpu', (d.user / 1000).toFixed(0));
}
