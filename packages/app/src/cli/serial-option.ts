import type { Arguments, Option } from './command.ts';

/** Which built machine a paper is for. */
export const SERIAL_OPTION: Option = {
  type: 'string',
  value: 'serial',
  help: 'serial number of the machine (needed)',
};
const LONGEST = 40;

/**
 * The serial number asked for.
 *
 * @throws RangeError when there is none, or it is longer than a plate can show
 */
export function serialFrom(args: Arguments): string {
  const serial = args.text('serial')?.trim() ?? '';
  if (serial === '' || serial.length > LONGEST || /\p{Cc}/u.test(serial))
    throw new RangeError(`--serial is '${serial}'; 1 to ${LONGEST} letters and figures were expected`);
  return serial;
}
