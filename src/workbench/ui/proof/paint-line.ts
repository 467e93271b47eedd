import { breathe } from '../../engine/breathe.ts';

/** As long as this much of a frame is left small pictures are painted in it. */
const budgetMs = 6;

const line = new Map<object, () => void>();
let painting = false;

async function paintAll(): Promise<void> {
  painting = true;
  while (line.size > 0) {
    await breathe();
    const until = performance.now() + budgetMs;
    for (const [whose, paint] of line) {
      line.delete(whose);
      paint();
      if (performance.now() > until) break;
    }
  }
  painting = false;
}

/** Paints a small picture right after the large one, a few in a task: the newest for each canvas only. Returns what takes it back. */
export function paintSoon(canvas: object, paint: () => void): () => void {
  line.delete(canvas);
  line.set(canvas, paint);
  if (!painting) void paintAll();
  return () => {
    if (line.get(canvas) === paint) line.delete(canvas);
  };
}
