/** What the desk shows to a device at the press. Nothing else of the job leaves the desk. */
export interface AwayView {
  readonly title: string;
  readonly language: string;
  readonly runs: readonly AwayRun[];
}
export interface AwayRun {
  readonly id: string;
  readonly name: string;
  /** Of the film on paper; null: the ink is open. */
  readonly colour: string | null;
  /** The sheet after this run, as an address that holds the picture. */
  readonly proof: string | null;
  /** In the order of this run. */
  readonly sheets: readonly { readonly id: string; readonly paper: string }[];
}
