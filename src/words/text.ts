/** What stands for a value in a message of the catalogues: its text, marked with the kind of value it comes from. */
declare const of: unique symbol;
/** A text that remembers, for the compiler alone, which kind of value it comes from. */
export interface Kinded<Kind> {
  readonly [of]?: Kind;
}
type Text<Kind> = string & Kinded<Kind>;
export type LengthText = Text<'length' | 'lengths'>;
export type FilmText = Text<'film'>;
export type AreaText = Text<'area'>;
export type MassText = Text<'mass'>;
export type VolumeText = Text<'volume'>;
export type TimeText = Text<'time'>;
export type ClockText = Text<'clock'>;
export type ShareText = Text<'share'>;
export type NumberText = Text<'number'>;
export type DeltaText = Text<'colour-difference'>;
export type LabText = Text<'lab'>;
export type NameText = Text<'name'>;
export type ListText = Text<'list'>;
export type SayingText = Text<'saying'>;

/** The same messages in another language: same keys, same values. */
export type Same<R> = { readonly [N in keyof R]: R[N] extends (values: infer V) => string ? (values: V) => string : R[N] };
