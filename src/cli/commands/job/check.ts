import { checkJob, fingerprintOf } from '../../../core/job/index.ts';
import { plan, readyBundle } from '../../../core/plan/index.ts';
import { name as asName, say } from '../../../words/index.ts';
import { prepare } from '../../assets.ts';
import type { Command } from '../../command.ts';
import { option } from '../../say/help.ts';
import { jobOf, printProblems } from '../../disk/load.ts';
import { stalePacket } from '../../disk/packet-folder.ts';
import { sayHere } from '../../reader.ts';

export const check: Command = {
  name: 'check',
  usage: say('help.checkUsage'),
  summary: say('help.checkSummary'),
  help: [say('help.checkText'), option('--strict', say('help.checkStrict')), option('--packet', say('help.checkPacket'), 'folder')],
  options: { strict: { type: 'boolean' }, packet: { type: 'string' } },
  async run(call) {
    const bundle = jobOf(call);
    let problems = checkJob(bundle);
    // What the rooms find is worth telling only when the job itself holds together.
    if (problems.every((p) => p.severity !== 'error')) {
      await prepare();
      problems = [...plan(await readyBundle(bundle)).problems];
    }
    const stale = stalePacket(call, bundle);
    if (stale) problems.push(stale);
    // What is not known is a note; whoever asks for strictness has it refused.
    if (call.options['strict'] === true) problems = problems.map((p) => (p.code === 'unknown-field' ? { ...p, severity: 'error' } : p));
    printProblems(problems, console.log);
    console.log(sayHere('answers.jobMark', { mark: asName(fingerprintOf(bundle)) }));
    const errors = problems.filter((p) => p.severity === 'error').length;
    console.log(
      problems.length === 0 ? sayHere('answers.nothingToMend') : sayHere('answers.toMend', { errors, others: problems.length - errors }),
    );
    return errors > 0 ? 1 : 0;
  },
};
