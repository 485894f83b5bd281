import {
  alternatives,
  byUse,
  proveRig,
  slotsOf,
  trialsOf,
  waysOut,
  type RawRig,
  type Trials,
} from '@spraywright/engine/rig';
import { alternativesText, waysOutText } from '../documents/advice-text.ts';
import { EXIT, type Arguments, type Terminal } from './command.ts';
import { readRigInputs, type Inputs } from './inputs.ts';

/** Prints for each broken or thin promise of a rig the changes that keep it. */
export function printWaysOut(args: Arguments, terminal: Terminal): number {
  const begun = begin(args, terminal);
  if (begun === undefined) return EXIT.input;
  const { trials, units } = begun;
  const work = waysOut(trials);
  let next = work.next();
  while (next.done !== true) next = work.next();
  const ways = next.value;
  terminal.out(args.flag('json') ? JSON.stringify({ waysOut: ways }, null, 2) : waysOutText(ways, units));
  return ways.some((w) => w.promise.state === 'broken' && w.ways.length === 0) ? EXIT.no : EXIT.ok;
}

/** Prints what every other part of one slot would do to a rig. */
export function printAlternatives(args: Arguments, terminal: Terminal): number {
  const begun = begin(args, terminal);
  if (begun === undefined) return EXIT.input;
  const { trials, units } = begun;
  const slots = slotsOf(trials.rig);
  const slot = slots.find((s) => s.id === args.positionals[1]);
  if (slot === undefined) {
    const asked = args.positionals[1];
    terminal.err(
      `--alternatives needs ${asked === undefined ? 'a slot' : `a slot of the rig, not '${asked}'`}: ${slots.map((s) => s.id).join(', ')}`,
    );
    return EXIT.input;
  }
  const list = byUse([...alternatives(trials, slot.id)]);
  const now = trials.rig.items.get(slot.id)?.part.name;
  terminal.out(
    args.flag('json')
      ? JSON.stringify(
          {
            slot: slot.id,
            alternatives: list.map(({ part, ...rest }) => ({ part: part.id, name: part.name, ...rest })),
          },
          null,
          2,
        )
      : alternativesText({ name: slot.name, now }, trials.proof, list, units),
  );
  return EXIT.ok;
}

/** Reads and proves the rig of the command line. */
function begin(
  args: Arguments,
  terminal: Terminal,
): { readonly trials: Trials; readonly units: Inputs['units'] } | undefined {
  const inputs = readRigInputs(args, terminal);
  if (inputs === undefined) return undefined;
  const { catalogue, shop, units, source, rig } = inputs;
  const proof = proveRig(rig, catalogue, shop, { units, notes: false });
  return {
    trials: trialsOf({ raw: source.raw as RawRig, rig, proof }, catalogue, shop, units),
    units,
  };
}
