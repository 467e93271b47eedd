import { log } from '../../numeric/index.ts';
import { figure, film, length, say, type Saying } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { depositOf } from './deposit.ts';
import { meshTable } from './mesh.ts';
import type { MeshRow } from './mesh.ts';

export interface MeshWish {
  /** Least line or opening of the drawing, mm. */
  readonly leastDetailMm: number;
  /** Largest grain in the ink, µm (a glitter or a bronze); left out: fine. */
  readonly grainMicrons?: number;
  /** Wet film wanted; left out: any. */
  readonly wetMicrons?: number;
  /** Ruling of a tint in lines per cm; left out: none. */
  readonly linesPerCm?: number;
}

export interface MeshAdvice {
  readonly mesh: MeshRow;
  readonly wetMicrons: number;
  /** 0: fits every wish; each reason adds. */
  readonly against: number;
  /** What speaks against it. */
  readonly reasons: readonly Saying[];
}

/**
 * Usual meshes, best first. Rules: a line at least three threads with their openings wide (common practice); an opening at
 * least three grains wide (common practice); threads at least 2.5 a ruling line (published: mesh maker's questions, 2.5,
 * 3.75 or 5); the film nearest the wish.
 */
export function adviseMesh(wish: MeshWish): readonly MeshAdvice[] {
  if (!(wish.leastDetailMm > 0)) fail('detail', 'layers', say('press.noLeastDetail'), say('press.giveNarrowestLine'));
  return meshTable
    .map((mesh): MeshAdvice => {
      const wet = depositOf(mesh).wetMicrons;
      const reasons: Saying[] = [];
      let against = 0;
      const detail = (3 * 10) / mesh.perCm;
      if (detail > wish.leastDetailMm) {
        against += 10 * (detail / wish.leastDetailMm - 1) + 5;
        reasons.push(say('press.fineLinesSaw', { under: length(detail, 2) }));
      }
      if (wish.grainMicrons !== undefined && mesh.openingMicrons < 3 * wish.grainMicrons) {
        against += 20;
        reasons.push(say('press.grainsBlock', { grain: film(wish.grainMicrons), opening: film(mesh.openingMicrons) }));
      }
      if (wish.linesPerCm !== undefined && mesh.perCm < 2.5 * wish.linesPerCm) {
        against += 20;
        const threads = Math.ceil(2.5 * wish.linesPerCm);
        reasons.push(say('press.rulingNeeds', { lines: figure(wish.linesPerCm, 2, false), threads }));
      }
      if (wish.wetMicrons !== undefined) {
        const off = Math.abs(log(wet / wish.wetMicrons));
        against += off;
        if (off > 0.2) reasons.push(say('press.otherFilm', { film: film(wet), wanted: film(wish.wetMicrons) }));
      }
      return { mesh, wetMicrons: wet, against, reasons };
    })
    .sort((one, other) => one.against - other.against || other.wetMicrons - one.wetMicrons);
}
