import { separated, veilOf, type Picture } from '../src/core/separate/index.ts';
import { quietTask } from '../src/core/task.ts';
import type { BenchRow } from './row.ts';
import { requestFor } from './separate-trial.ts';

/** A bridge longer than this is seen as a line of its own. */
const longBridgeMm = 15;

/** What a hand would say of the stencils: corners a metre, minutes, long bridges; and what the print keeps of the drawing, beside as many flat inks. */
export async function handRow(name: string, picture: Picture, layers: number): Promise<BenchRow> {
  const start = performance.now();
  const {
    layers: runs,
    figures,
    baseline,
  } = await separated(
    requestFor(picture, layers, { rasterMm: 0.25, mostInPot: 2, registerSigmaMm: 0.5, importance: veilOf(picture) }),
    quietTask,
  );
  const corners = runs.reduce((sum, run) => sum + run.stencil.knife.corners, 0);
  const long = runs.flatMap((run) => run.stencil.bridges).filter(({ line }) => lengthOf(line) > longBridgeMm).length;
  const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
  return {
    name: `${name}, ${layers} runs by hand`,
    medianMs: performance.now() - start,
    note: [
      `${(corners / figures.knifeMetres).toFixed(0)} corners a metre on ${figures.knifeMetres.toFixed(1)} m`,
      `${figures.minutes.toFixed(0)} min`,
      `${long} of ${figures.bridges} bridges over ${longBridgeMm} mm`,
      `edges kept ${percent(figures.structure.kept)}, made up ${percent(figures.structure.invented)} (flat inks ${percent(baseline.structure.kept)}, ${percent(baseline.structure.invented)})`,
      `ΔE00 ${figures.inRegister.mean.toFixed(2)}, ÷ flat inks ${(figures.inRegister.mean / baseline.inRegister.mean).toFixed(2)}`,
    ].join('; '),
  };
}

function lengthOf(line: readonly number[]): number {
  let sum = 0;
  for (let i = 2; i < line.length; i += 2) sum += Math.hypot(line[i] - line[i - 2], line[i + 1] - line[i - 1]);
  return sum;
}
