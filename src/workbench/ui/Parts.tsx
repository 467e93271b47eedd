import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

export interface Part {
  readonly id: string;
  readonly title: string;
  /** One line: what is known, or what is missing. */
  readonly says: string;
  /** Something here must be looked at. */
  readonly look: boolean;
  readonly view: () => ComponentChildren;
}

/** A page of its own that the row leads to. */
export interface PartPage {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  /** Its address. */
  readonly href: string;
}

interface Props {
  readonly label: string;
  readonly parts: readonly Part[];
  readonly at: Signal<string>;
  /** What the row leads to besides, at its end. */
  readonly page?: PartPage;
}

/** The parts of a station in the order of the work; one is laid open, all say how they stand. */
export function Parts({ label, parts, at, page }: Props) {
  const open = parts.find((p) => p.id === at.value) ?? parts[0];
  const row = useRef<HTMLElement>(null);
  // On a narrow screen the row is longer than the screen; the part laid open is in sight, whoever opened it.
  useEffect(() => row.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' }), [open.id]);
  return (
    <>
      <nav ref={row} class="parts" aria-label={label}>
        {parts.map((part) => (
          <button
            key={part.id}
            type="button"
            class="part"
            data-part={part.id}
            aria-current={part === open ? 'step' : undefined}
            onClick={() => {
              at.value = part.id;
            }}
          >
            <b>{part.title}</b>
            <small class={part.look ? 'needs' : 'knows'}>{part.says}</small>
          </button>
        ))}
        {page && (
          <a class="part part-page" data-part={page.id} href={page.href}>
            <b>{page.title}</b>
            <small class="knows">{page.says}</small>
          </a>
        )}
      </nav>
      <section class="part-open">{open.view()}</section>
    </>
  );
}
