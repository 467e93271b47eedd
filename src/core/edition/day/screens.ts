import type { DayScreen } from './day-bench.ts';
import type { DayInput } from './day-input.ts';

/** Which run's stencil is on which screen, and when screens are washed and dry. */
export class Screens {
  private readonly input: DayInput;
  private readonly setUp = new Map<number, { readonly screen: DayScreen; readonly ready: number }>();
  private readonly washed = new Map<string, number>();
  /** Run → when its own stencil came off the press: a second sitting needs the same one. */
  private readonly washedOf = new Map<number, number>();

  constructor(input: DayInput) {
    this.input = input;
  }

  /** The screen that a run is set up on, and since when it is ready. */
  of(run: number): { readonly screen: DayScreen; readonly ready: number } | undefined {
    return this.setUp.get(run);
  }

  /** From when a run can be set up on a screen. */
  dryFor(run: number, screen: DayScreen): number {
    return Math.max(this.washed.get(screen.id) ?? 0, this.washedOf.get(run) ?? 0);
  }

  mount(run: number, screen: DayScreen, ready: number): void {
    this.setUp.set(run, { screen, ready });
  }

  /** Off the press, washed; `dry`: tape holds on it again. */
  wash(run: number, screen: DayScreen, dry: number): void {
    this.washed.set(screen.id, dry);
    this.washedOf.set(run, dry);
    this.setUp.delete(run);
  }

  /** The run's own screen if it is free, else any that no run has taken: the one that is washed first. */
  freeFor(run: number): DayScreen | undefined {
    const { input } = this;
    const taken = new Set([...this.setUp.values()].map((one) => one.screen.id));
    const nameOf = (name: string): DayScreen => screenNamed(name, input.screensByMesh);
    const named = [...new Set(input.runs.flatMap((one) => one.screen ?? []))].map(nameOf);
    const own = input.runs[run].screen;
    if (own !== undefined) return taken.has(nameOf(own).id) ? undefined : nameOf(own);
    const others = Array.from({ length: Math.max(0, input.screens - named.length) }, (_, i) =>
      screenOf((input.screensByMesh ? 0 : named.length) + i + 1),
    );
    // A screen that a run before its pull still waits for by name is left to it.
    return this.soonest(others, taken) ?? (input.screensByMesh ? undefined : this.soonest(named, taken));
  }

  private soonest(screens: readonly DayScreen[], taken: ReadonlySet<string>): DayScreen | undefined {
    const since = (screen: DayScreen): number => this.washed.get(screen.id) ?? 0;
    return screens
      .filter((screen) => !taken.has(screen.id))
      .reduce<DayScreen | undefined>((best, screen) => (best === undefined || since(screen) < since(best) ? screen : best), undefined);
  }
}

const screenNamed = (name: string, mesh = false): DayScreen => ({ id: `named ${name}`, name, ...(mesh ? { mesh } : {}) });
const screenOf = (number: number): DayScreen => ({ id: String(number), number });
