/** A text that a figure of this layer comes from. */
export interface Source {
  readonly id: string;
  readonly organisation: string;
  readonly title: string;
  readonly detail: string;
  /** Empty when there is no lasting public address. */
  readonly url: string;
  /** True when the text was read in a stored copy; false when it was recalled. */
  readonly seen: boolean;
}
