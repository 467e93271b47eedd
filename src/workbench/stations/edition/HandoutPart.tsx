import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { PlaneCanvas } from '../../ui/PlaneCanvas.tsx';
import { StencilPicture } from '../../ui/StencilPicture.tsx';
import { told, words } from '../../store/words.ts';
import type { PartProps } from '../press/setup/part.ts';

/** The teaching hand-out made from this job: what to bring, the steps in order with this job's own pictures, cautions where the risk is. */
export function HandoutPart({ bench, plan }: PartProps) {
  const w = words().edition;
  const l = words().laydown;
  const { handout } = plan.edition;
  const paper = bench.paper.value;
  const { image } = plan.job;
  if (!handout)
    return (
      <div class="part-empty">
        <p>{w.handoutNone}</p>
      </div>
    );
  const printed = (id: string): number =>
    plan.layers.filter((one) => one.inkId !== null && one.run <= (plan.layers.find((x) => x.id === id)?.run ?? 0)).length;
  const picture = (of: (typeof handout.steps)[number]['picture']) => {
    if (of.kind === 'stencil') {
      const layer = plan.layers.find((one) => one.id === of.layer);
      if (layer?.tone) return <PlaneCanvas {...plan.codes} plane={layer.tone.plane} widestPx={480} label={layer.name} />;
      return (
        layer && (
          <StencilPicture
            prints={layer.stencil.prints}
            widthMm={image.widthMm}
            heightMm={image.heightMm}
            label={layer.side === 'window' ? l.windowPicture(layer.name) : l.piecePicture(layer.name)}
          />
        )
      );
    }
    if (!paper || of.kind === 'none' || of.kind === 'fit' || of.kind === 'stops') return null;
    return of.kind === 'after' ? (
      <ProofCanvas
        bench={bench}
        plan={plan}
        paper={paper}
        runs={printed(of.layer)}
        label={l.sheetAfter(plan.layers.find((one) => one.id === of.layer)?.run ?? 0)}
      />
    ) : (
      <ProofCanvas bench={bench} plan={plan} paper={paper} label={l.proof(paper.name)} />
    );
  };
  return (
    <article class="handout">
      <h2>{handout.title}</h2>
      <p>{told(handout.intro)}</p>
      <section>
        <h3>{w.bring}</h3>
        <ul class="bring">
          {handout.bring.map((one, at) => (
            <li key={at}>{told(one)}</li>
          ))}
        </ul>
      </section>
      <ol class="handout-steps">
        {handout.steps.map((step) => {
          const drawn = picture(step.picture);
          return (
            <li key={step.number}>
              <span class="run-number">{step.number}</span>
              <div>
                <h3>{told(step.title)}</h3>
                <p>{told(step.text)}</p>
                {step.cautions.length > 0 && (
                  <ul class="says-do">
                    {step.cautions.map((c) => (
                      <li key={c.id}>{told(c.text)}</li>
                    ))}
                  </ul>
                )}
              </div>
              {drawn && (
                <div class="handout-picture" style={{ '--ratio': String(image.widthMm / image.heightMm) }}>
                  {drawn}
                </div>
              )}
            </li>
          );
        })}
      </ol>
      <p>{w.blank(told(handout.blank.title))}</p>
    </article>
  );
}
