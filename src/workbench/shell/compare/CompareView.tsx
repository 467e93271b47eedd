import type { Bench } from '../../store/bench.ts';
import type { Keeper } from '../../store/keep/keep.ts';
import type { Keeping } from '../../store/keep/keeping.ts';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { ProofSheet } from '../../ui/proof/ProofSheet.tsx';
import { Wipe } from '../../ui/proof/Wipe.tsx';
import { sayVersion, words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { SideChoice } from './SideChoice.tsx';
import { left, lie, right, wipeShare, type Chosen, type Lie } from './state.ts';
import { Told } from './Told.tsx';
import { useVersion } from './use-version.ts';

interface Props {
  readonly bench: Bench;
  readonly keeping: Keeping;
  readonly keeper: Keeper;
}

/** Two versions, or one version on two papers, side by side or with a wipe; or one version on all its papers. */
export function CompareView({ bench, keeping, keeper }: Props) {
  const w = words().compare;
  const versions = keeping.versions.value;
  const a = useVersion(bench, keeper, left.value.which);
  const b = useVersion(bench, keeper, right.value.which);
  const paperOf = (plan: ShownPlan | null, chosen: Chosen): ShownPaper | undefined =>
    plan?.papers.find((p) => p.id === (chosen.paperId ?? bench.paper.value?.id)) ?? plan?.papers[0];
  const [paperA, paperB] = [paperOf(a.plan, left.value), paperOf(b.plan, right.value)];
  const nameOf = ({ which }: Chosen): string => {
    const version = versions.find((v) => v.id === which);
    return version ? sayVersion(version) : w.now;
  };
  const proof = (plan: ShownPlan, paper: ShownPaper, chosen: Chosen) => (
    <ProofCanvas bench={bench} plan={plan} paper={paper} other={chosen.which !== 'now'} label={w.proof(nameOf(chosen), paper.name)} />
  );
  const ratioOf = (plan: ShownPlan): number => plan.job.image.widthMm / plan.job.image.heightMm;
  const sameShape = a.plan !== null && b.plan !== null && Math.abs(ratioOf(a.plan) / ratioOf(b.plan) - 1) < 0.005;
  const ways: readonly (readonly [Lie, string])[] = [
    ['beside', w.beside],
    ['wipe', w.wipe],
    ['papers', w.papers],
  ];
  const how = lie.value;
  return (
    <div class="versus">
      <div class="versus-bar">
        <fieldset class="choices">
          <legend class="unseen">{w.how}</legend>
          {ways.map(([id, name]) => (
            <label key={id} class="choice-mark">
              <input
                type="radio"
                name="versus-lie"
                checked={how === id}
                onChange={() => {
                  lie.value = id;
                }}
              />
              <span>{name}</span>
            </label>
          ))}
        </fieldset>
        <a class="button button-line button-link" href="#laydown">
          {w.back}
        </a>
      </div>
      {(a.working || b.working) && (a.plan === null || b.plan === null) && <p role="status">{w.working}</p>}
      {(a.failed || b.failed) && <p role="alert">{w.failed}</p>}
      {how === 'wipe' && a.plan && b.plan && !sameShape && <p role="status">{w.otherShape}</p>}
      {how === 'papers' ? (
        <>
          <SideChoice side={w.left} chosen={left} versions={versions} plan={a.plan} />
          <div class="versus-papers">
            {a.plan?.papers.map((paper) => (
              <figure key={paper.id} class="proof-figure">
                <ProofSheet plan={a.plan!} paper={paper}>
                  {proof(a.plan!, paper, left.value)}
                </ProofSheet>
                <figcaption>
                  <b>{paper.name}</b>
                </figcaption>
              </figure>
            ))}
          </div>
        </>
      ) : how === 'wipe' && sameShape && a.plan && b.plan && paperA && paperB ? (
        <>
          <div class="versus-heads">
            <SideChoice side={w.left} chosen={left} versions={versions} plan={a.plan} paperId={paperA.id} />
            <SideChoice side={w.right} chosen={right} versions={versions} plan={b.plan} paperId={paperB.id} />
          </div>
          <Wipe
            share={wipeShare}
            ratio={ratioOf(a.plan)}
            over={proof(a.plan, paperA, left.value)}
            under={proof(b.plan, paperB, right.value)}
          />
        </>
      ) : (
        <div class="versus-two">
          {(
            [
              [left, a, paperA, w.left],
              [right, b, paperB, w.right],
            ] as const
          ).map(([chosen, side, paper, name]) => (
            <figure key={name} class="proof-figure" data-side={chosen === left ? 'left' : 'right'}>
              <figcaption>
                <SideChoice side={name} chosen={chosen} versions={versions} plan={side.plan} paperId={paper?.id} />
              </figcaption>
              {side.plan && paper && (
                <ProofSheet plan={side.plan} paper={paper}>
                  {proof(side.plan, paper, chosen.value)}
                </ProofSheet>
              )}
            </figure>
          ))}
        </div>
      )}
      {how !== 'papers' && a.plan && b.plan && paperA && paperB && (
        <Told left={{ plan: a.plan, paper: paperA }} right={{ plan: b.plan, paper: paperB }} />
      )}
    </div>
  );
}
