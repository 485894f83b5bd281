import { searchRigs, whyNot } from '@spraywright/engine/rig';
import { choicesText } from '../documents/choices-text.ts';
import { located } from '../documents/json-source.ts';
import { whyNotText } from '../documents/why-not-text.ts';
import { EXIT, type Arguments, type Terminal } from './command.ts';
import { printProblems, readInputs, readSource } from './inputs.ts';

/** Prints the rigs for a brief that no other beats. */
export function printChoices(args: Arguments, terminal: Terminal): number {
  const proofs = proofsAsked(args, terminal);
  const within = withinAsked(args, terminal);
  const inputs = readInputs(args, terminal);
  const source = readSource(args.positionals[0]!, 'brief', terminal);
  if (proofs === 'wrong' || within === 'wrong' || inputs === undefined || source === undefined)
    return EXIT.input;
  const { catalogue, shop, units } = inputs;
  const found = searchRigs(source.raw, catalogue, shop, {
    units,
    ...(proofs === undefined ? {} : { mostProofs: proofs }),
    ...(within === undefined ? {} : { within }),
  });
  if (!found.ok) {
    printProblems(located(source, [...found.problems]), terminal);
    return EXIT.input;
  }
  terminal.out(
    args.flag('json')
      ? JSON.stringify(found, null, 2)
      : choicesText(found, (id) => catalogue.parts.get(id)?.name ?? id, catalogue.layouts, units),
  );
  return found.choices.length === 0 ? EXIT.no : EXIT.ok;
}

function proofsAsked(args: Arguments, terminal: Terminal): number | undefined | 'wrong' {
  const text = args.text('proofs');
  if (text === undefined) return undefined;
  if (/^[1-9]\d{0,6}$/.test(text)) return Number(text);
  terminal.err(`--proofs is '${text}'; it must be a whole number from 1 to 9999999`);
  return 'wrong';
}

/** Share of price, mass and margin that is no matter. */
function withinAsked(args: Arguments, terminal: Terminal): number | undefined | 'wrong' {
  const text = args.text('within');
  if (text === undefined) return undefined;
  const percent = /^\d{1,2}(\.\d{1,3})? ?%?$/.test(text) ? Number.parseFloat(text) : Number.NaN;
  if (percent <= 50) return percent / 100;
  terminal.err(`--within is '${text}'; it must be a percentage from 0 to 50, such as 1%`);
  return 'wrong';
}

/** Prints why no rig keeps every promise of a brief, and the least that could be asked less. */
export function printWhyNot(args: Arguments, terminal: Terminal): number {
  const inputs = readInputs(args, terminal);
  const source = readSource(args.positionals[0]!, 'brief', terminal);
  if (inputs === undefined || source === undefined) return EXIT.input;
  const { catalogue, shop, units } = inputs;
  const told = whyNot(source.raw, catalogue, shop, { units });
  if (!told.ok) {
    printProblems(located(source, [...told.problems]), terminal);
    return EXIT.input;
  }
  terminal.out(args.flag('json') ? JSON.stringify(told, null, 2) : whyNotText(told, catalogue.layouts));
  return told.possible ? EXIT.ok : EXIT.no;
}
