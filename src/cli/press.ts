import { sayLength } from '../core/units/index.ts';
import { sayingsIn, tell } from '../words/index.ts';
import type { Command } from './command.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';

export const press: Command = {
  name: 'press',
  usage: 'press JOB [--json]',
  summary: 'screen, film, gap and risers, register',
  help: 'Does the screen fit, how thick the film, how high the gap and the risers, how far the image grows, and what register forgives.\n--json  everything as JSON',
  options: { json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    const { press: p, register: r } = plan;
    if (call.options['json']) {
      const register = { ...r, draws: { medianMm: r.draws.medianMm, p95Mm: r.draws.p95Mm } };
      console.log(
        JSON.stringify(
          { press: p, register },
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
      return 0;
    }
    const say = (mm: number, digits?: number): string => sayLength(mm, plan.job.units, digits);
    const { mesh } = p.deposit;
    console.log(
      `Mesh       ${mesh.perCm} threads a cm (${mesh.perInch.toFixed(0)} an inch), thread ${mesh.threadMicrons} µm, opening ${mesh.openingMicrons.toFixed(0)} µm, ${mesh.openPercent.toFixed(0)} % open${p.screenKnown ? '' : ' (a usual one: the job has no screen yet)'}`,
    );
    console.log(
      `Film       ${p.deposit.wetMicrons.toFixed(0)} µm wet (${p.deposit.wetRange.map((v) => v.toFixed(0)).join('–')}), ${p.deposit.dryMicrons.toFixed(0)} µm dry`,
    );
    if (p.fit) {
      console.log(
        `Fit        ${{ holds: 'there is room', tight: 'tight, with care', no: 'does not fit' }[p.fit.verdict]}; ${p.fit.margins.map((m) => `${m.side} ${say(m.mm)}${m.missingMm > 0 ? ` (${say(m.missingMm)} short)` : ''}`).join(', ')}`,
      );
      console.log(`Squeegee   ${say(p.fit.squeegee.leastMm)} to ${say(p.fit.squeegee.mostMm)}, best ${say(p.fit.squeegee.bestMm)}`);
      for (const remedy of p.fit.remedies) console.log(`           ${tellHere(remedy.text)}`);
    }
    console.log(`Gap        ${say(p.gapMm)}. ${tellHere(p.gap.why)}`);
    if (p.offContact)
      console.log(
        `Growth     along the stroke ${say(p.offContact.alongMm, 2)}, across ${p.offContact.acrossMm.map((v) => say(v, 2)).join(' to ')}; the same for all layers as long as screen, place and gap stay`,
      );
    for (const gap of p.gaps.filter((one) => one.own)) {
      const layer = plan.layers.find((l) => l.id === gap.layerId);
      console.log(
        `           run ${layer?.run}, ${layer?.name}: gap ${say(gap.gapMm)}${gap.growth ? `, grows ${say(gap.growth.alongMm, 2)} along, ${say(Math.max(...gap.growth.acrossMm), 2)} across` : ''}${gap.risers ? `; mesh ${say(gap.risers.heightMm)} above the board, front ${say(gap.risers.frontMm)}` : ''}`,
      );
    }
    if (p.risers) {
      console.log(
        `Risers     mesh ${say(p.risers.heightMm)} above the board; front ${say(p.risers.frontMm)}${p.risers.underHingeMm > 0.05 ? `, ${say(p.risers.underHingeMm)} under the hinge` : ''}${p.risers.underPaperMm > 0.05 ? `, ${say(p.risers.underPaperMm)} of board under the paper` : ''}`,
      );
      for (const l of p.risers.layers) console.log(`           ${l.count} × ${say(l.thicknessMm)} board: ${say(l.heightMm)}`);
    }
    console.log(`Register   ${tellHere(r.sigma.text)}`);
    if (r.tested?.found)
      console.log(
        `           test sheets in the job: σ ${say(r.tested.found.sigmaMm.both, 2)}${r.tested.taken ? '' : ', not used for the plan (laydown register)'}`,
      );
    console.log(
      `           half of the sheets within ${say(r.draws.medianMm, 2)}, nineteen in twenty within ${say(r.draws.p95Mm, 2)} at the worst corner`,
    );
    for (const pair of r.budget?.pairs ?? []) {
      if (pair.forgivesMm === null) continue;
      const name = (id: string): string => plan.layers.find((l) => l.id === id)?.name ?? id;
      console.log(
        `  ${name(pair.first)} and ${name(pair.second)}: likely within ${say(pair.likelyMm, 1)}, worst ${say(pair.worstMm, 1)}; the drawing forgives ${say(pair.forgivesMm, 1)}: ${pair.verdict}`,
      );
    }
    const said = [...p.problems, ...r.problems];
    printProblems(said, console.log);
    return said.some((one) => one.severity === 'error') ? 1 : 0;
  },
};
