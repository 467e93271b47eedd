import type { Plan } from '../core/plan/index.ts';

/** The few figures a printmaker asks for first. */
export function headlines(plan: Plan): string[] {
  const metres = plan.layers.reduce((sum, l) => sum + l.stencil.knife.metres, 0);
  const bridges = plan.layers.reduce((sum, l) => sum + l.stencil.bridges.length, 0);
  const grams = plan.layers.reduce((sum, l) => sum + (l.mix?.totalGrams ?? 0), 0);
  const paper = plan.papers[0];
  return [
    `${plan.job.title}: ${plan.layers.length} runs on ${plan.papers.length} papers, ${plan.job.image.widthMm} × ${plan.job.image.heightMm} mm`,
    ...(paper
      ? [
          `${paper.overlaps.length} overlaps cover area on ${paper.name}; foreseen within ±${Math.max(0, ...paper.overlaps.map((o) => o.band)).toFixed(1)} ΔE00 at the worst`,
        ]
      : []),
    `${metres.toFixed(1)} m to cut, ${bridges} bridges; ${grams.toFixed(0)} g of ink to mix`,
  ];
}
