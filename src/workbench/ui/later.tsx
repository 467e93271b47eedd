import { signal, type ReadonlySignal } from '@preact/signals';
import type { ComponentType, JSX } from 'preact';
import { useEffect } from 'preact/hooks';

/** A part of the page that is fetched when it is first shown, or before that while the page rests. */
export interface Later<P> {
  readonly now: ReadonlySignal<ComponentType<P> | null>;
  /** It did not arrive: the network is off and nothing is kept yet. */
  readonly missing: ReadonlySignal<boolean>;
  load(): Promise<void>;
}

const all: Later<never>[] = [];

export function later<P>(bring: () => Promise<ComponentType<P>>): Later<P> {
  const now = signal<ComponentType<P> | null>(null);
  const missing = signal(false);
  let coming: Promise<void> | null = null;
  const part: Later<P> = {
    now,
    missing,
    load: () =>
      (coming ??= bring().then(
        (view) => {
          missing.value = false;
          // A component is a function: a signal takes it as the value it is.
          now.value = view;
        },
        () => {
          missing.value = true;
          coming = null;
        },
      )),
  };
  all.push(part as unknown as Later<never>);
  return part;
}

/** One after the other, each a task of its own. */
export async function bringAll(): Promise<void> {
  for (const part of all) {
    await part.load();
    await new Promise((rest) => setTimeout(rest));
  }
}

/** Shows it as soon as it is there; `meanwhile` until then, `instead` where it can't be had. */
export function Arriving<P extends object>({
  part,
  props,
  meanwhile,
  instead,
}: {
  readonly part: Later<P>;
  readonly props: P;
  readonly meanwhile: JSX.Element;
  readonly instead: (again: () => void) => JSX.Element;
}) {
  useEffect(() => void part.load(), [part]);
  const View = part.now.value;
  if (View) return <View {...(props as P & JSX.IntrinsicAttributes)} />;
  return part.missing.value ? instead(() => void part.load()) : meanwhile;
}
