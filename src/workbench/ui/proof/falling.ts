import { useSignal, type Signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Codes } from '../../../core/print/index.ts';
import type { Bench } from '../../store/bench.ts';
import type { ShownPlan } from '../../engine/protocol.ts';

/** In register, as most sheets fall, or among the worst twentieth. */
export type FallKind = 'register' | 'typical' | 'worst';

export interface Falling {
  readonly kind: Signal<FallKind>;
  /** Goes on to the next sheet of that kind. */
  readonly turn: Signal<number>;
  /** Of `register.draws`; null: in register. */
  readonly sheet: number | null;
  /** The codes of that sheet are here; until then what is shown is in register. */
  readonly here: boolean;
  /** The plan with the codes of that sheet. */
  readonly shown: ShownPlan;
}

/** How many of the sheets nearest the middle stand for what most look like. */
const typicalSheets = 10;

/**
 * The print as one sheet of the draw falls. The worker shifts the layers once for each sheet; a new ink or strength then only
 * paints, so a slider is as quick as in register.
 */
export function useFalling(bench: Bench, plan: ShownPlan | null, first: FallKind): Falling | null {
  const kind = useSignal<FallKind>(first);
  const turn = useSignal(0);
  const fallen = useSignal<{ readonly sheet: number; readonly of: unknown; readonly codes: Codes } | null>(null);
  const draws = plan?.register.draws;
  const typical = draws
    ? [...draws.sheets.keys()]
        .sort((a, b) => Math.abs(draws.sheets[a].offMm - draws.medianMm) - Math.abs(draws.sheets[b].offMm - draws.medianMm))
        .slice(0, typicalSheets)
    : [];
  const from = kind.value === 'worst' ? (draws?.worst ?? []) : typical;
  const sheet = kind.value === 'register' || from.length === 0 ? null : from[turn.value % from.length];

  useEffect(() => {
    if (sheet === null || !plan) return;
    let wanted = true;
    bench
      .upToDate()
      .then(() => (wanted ? bench.ask('sheetCodes', { sheet }) : null))
      .then(
        (codes) => {
          if (codes && wanted) fallen.value = { sheet, of: plan.codes, codes };
        },
        () => undefined,
      );
    return () => {
      wanted = false;
    };
  }, [sheet, plan?.codes, draws]);

  if (!plan) return null;
  const now = fallen.value;
  // Codes of a plan that is gone may give the layers other bits: they are never painted with the new palette.
  const fits = sheet !== null && now !== null && now.of === plan.codes;
  return { kind, turn, sheet, here: fits && now.sheet === sheet, shown: fits ? { ...plan, codes: now.codes } : plan };
}
