/** One option of a quote as it is typed. */
export interface OptionTyped {
  readonly name: string;
  /** Another job whose rig it is; empty: the quote's own job. */
  readonly job: string;
  readonly discount: string;
  /** A frozen rig that is carried over from the revision before. */
  readonly kept: unknown;
}

export const EMPTY_OPTION: OptionTyped = { name: '', job: '', discount: '', kept: undefined };

/** The fields of one option: its name, whose rig it is, and what is taken off. */
export function OptionFields(given: {
  readonly place: number;
  readonly option: OptionTyped;
  readonly put: (fields: Partial<OptionTyped>) => void;
  readonly leaveOut?: () => void;
}) {
  const { place, option, put, leaveOut } = given;
  return (
    <fieldset>
      <legend className="heading">Option {place}</legend>
      <p className="row">
        <label>
          Called{' '}
          <input
            required
            maxLength={60}
            value={option.name}
            onChange={({ target }) => put({ name: target.value })}
          />
        </label>
        <label>
          Rig of{' '}
          <input
            list="jobs-known"
            value={option.job}
            placeholder={option.kept === undefined ? "the quote's own job" : 'as in the revision before'}
            onChange={({ target }) => put({ job: target.value })}
          />
        </label>
        <label>
          Discount, %{' '}
          <input
            inputMode="decimal"
            size={5}
            placeholder="none"
            value={option.discount}
            onChange={({ target }) => put({ discount: target.value })}
          />
        </label>
        {leaveOut !== undefined && (
          <button type="button" onClick={leaveOut}>
            Leave it out
          </button>
        )}
      </p>
    </fieldset>
  );
}
