import { fail } from '../problem.ts';
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
  readonly reasons: readonly string[];
}

/**
 * Usual meshes, best first. Rules: a line at least three threads with their openings wide (common practice); an opening at
 * least three grains wide (common practice); threads at least 2.5 a ruling line (published: mesh maker's questions, 2.5,
 * 3.75 or 5); the film nearest the wish.
 */
export function adviseMesh(wish: MeshWish): readonly MeshAdvice[] {
  if (!(wish.leastDetailMm > 0)) fail('detail', 'layer', 'The drawing has no least detail.', 'Give its narrowest line in mm.');
  return meshTable
    .map((mesh): MeshAdvice => {
      const wet = depositOf(mesh).wetMicrons;
      const reasons: string[] = [];
      let against = 0;
      const detail = (3 * 10) / mesh.perCm;
      if (detail > wish.leastDetailMm) {
        against += 10 * (detail / wish.leastDetailMm - 1) + 5;
        reasons.push(`lines under ${detail.toFixed(2)} mm get saw-toothed edges`);
      }
      if (wish.grainMicrons !== undefined && mesh.openingMicrons < 3 * wish.grainMicrons) {
        against += 20;
        reasons.push(`grains of ${wish.grainMicrons} µm block openings of ${mesh.openingMicrons} µm`);
      }
      if (wish.linesPerCm !== undefined && mesh.perCm < 2.5 * wish.linesPerCm) {
        against += 20;
        reasons.push(`${wish.linesPerCm} lines a cm need at least ${Math.ceil(2.5 * wish.linesPerCm)} threads a cm`);
      }
      if (wish.wetMicrons !== undefined) {
        const off = Math.abs(Math.log(wet / wish.wetMicrons));
        against += off;
        if (off > 0.2) reasons.push(`lays down about ${wet.toFixed(0)} µm instead of ${wish.wetMicrons.toFixed(0)}`);
      }
      return { mesh, wetMicrons: wet, against, reasons };
    })
    .sort((one, other) => one.against - other.against || other.wetMicrons - one.wetMicrons);
}
