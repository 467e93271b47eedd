import { z } from 'zod';
import { plainLine } from '../../plain-text.ts';
import type { Format } from '../../faults.ts';

const share = z.number().min(0).max(1);

/** A camera whose lens was read from photographs of a checked board. The photograph's own file tells which camera it is. */
export const CameraSchema = z.looseObject({
  /** Make and model as its photographs say; left out where they say nothing. */
  name: z
    .string()
    .min(1)
    .max(200)
    .regex(plainLine, 'plain-line' satisfies Format)
    .optional(),
  /** As it was zoomed. */
  focalMm: z.number().gt(0).max(5000).optional(),
  /** Width by height of its photographs as it stores them: one that was cut has its middle elsewhere. */
  aspect: z.number().gt(0.1).max(10),
  /** Of the lens, in shares of the photograph. */
  lensMiddle: z.tuple([share, share]),
  /** What is seen at r half diagonals from the middle belongs at r (1 + bend r² + bendFar r⁴). */
  bend: z.number().min(-2).max(2),
  bendFar: z.number().min(-4).max(4),
  /** Photographs of a board that it was read from. */
  boards: z.int().min(1).max(1000),
});

export type JobCamera = z.output<typeof CameraSchema>;
