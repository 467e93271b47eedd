// npm run attack [-- KIND …] [--seed N] [--times N] [--minutes N]: what damaged files, odd requests and kills at random moments do to Laydown.
// Prints tried / survived / lost for each kind; ends with 1 where anything was lost, died, or took more than 20 s or 1 GB.
import { parseArgs } from 'node:util';
import { attackBrowser } from './browser.ts';
import { attackInputs, attackJobs, type Wish } from './inputs.ts';
import { attackCommands } from './kills.ts';
import { attackServer } from './requests.ts';
import { attackSameness } from './same.ts';
import { head, type Tally } from './tally.ts';

const kinds: Readonly<Record<string, readonly [usual: number, attack: (wish: Wish) => Promise<Tally[]>]>> = {
  inputs: [5000, attackInputs],
  jobs: [5000, attackJobs],
  requests: [100, attackServer],
  kills: [200, attackCommands],
  browser: [200, attackBrowser],
  same: [1, attackSameness],
};

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { seed: { type: 'string', default: '1' }, times: { type: 'string' }, minutes: { type: 'string', default: '10' } },
});
const asked = positionals.length > 0 ? positionals : Object.keys(kinds);
const unknown = asked.find((kind) => !Object.hasOwn(kinds, kind));
if (unknown !== undefined) {
  console.error(`There is no attack “${unknown}”; there are ${Object.keys(kinds).join(', ')}.`);
  process.exit(2);
}
let holds = true;
console.log(head);
for (const kind of asked) {
  const [usual, attack] = kinds[kind];
  const wish = { seed: Number(values.seed), times: Number(values.times ?? usual), until: Date.now() + Number(values.minutes) * 60_000 };
  for (const tally of await attack(wish)) {
    console.log(tally.line());
    for (const line of tally.told) console.log(`    ${line}`);
    holds &&= tally.holds;
  }
}
process.exit(holds ? 0 : 1);
