import { writeFileSync } from 'node:fs';
import type { Catalogue } from '@spraywright/engine/catalogue';
import { proveRig, type Proof, type Rig } from '@spraywright/engine/rig';
import type { QuoteOptions } from '../documents/quote-options.ts';
import { parseDay } from '../documents/quote-terms.ts';
import {
  CATALOGUE_OPTION,
  EXIT,
  JSON_OPTION,
  SHOP_OPTION,
  UNITS_OPTION,
  type Arguments,
  type Command,
  type Option,
  type Terminal,
} from './command.ts';
import { readRigInputs } from './inputs.ts';

/** What a paper may need beside the proof. */
interface PaperGiven {
  readonly file: string;
  readonly args: Arguments;
  readonly catalogue: Catalogue;
  readonly terminal: Terminal;
}

interface Paper {
  readonly name: string;
  readonly summary: string;
  /** What the paper is called in a sentence: "The quote". */
  readonly called: string;
  /** Endings of the files that it can be written as; .pdf where none are named. */
  readonly endings?: readonly string[];
  /** Options of this paper alone, and how an example gives them. */
  readonly options?: Readonly<Record<string, Option>>;
  readonly example?: string;
  /** Bytes of the paper; a RangeError says why this rig has none; undefined when problems have been printed. */
  readonly write: (
    rig: Rig,
    proof: Proof,
    options: QuoteOptions,
    given: PaperGiven,
  ) => Promise<Uint8Array | undefined>;
}

/** A command that proves a rig and writes a paper about it. */
export function paperCommand({
  name,
  summary,
  called,
  endings = ['.pdf'],
  options,
  example,
  write,
}: Paper): Command {
  const also = example === undefined ? '' : ` ${example}`;
  return {
    name,
    usage: `rig.json -o ${name}.pdf${also}`,
    summary,
    options: {
      output: { type: 'string', short: 'o', value: `${name}.pdf`, help: 'file to write (needed)' },
      date: { type: 'string', value: 'YYYY-MM-DD', help: 'date of the paper (default: today)' },
      ...options,
      catalogue: CATALOGUE_OPTION,
      shop: SHOP_OPTION,
      units: UNITS_OPTION,
      json: JSON_OPTION,
    },
    least: 1,
    most: 1,
    examples: [
      `spraywright ${name} rig.json -o ${name}.pdf${also}`,
      `spraywright ${name} rig.json -o ${name}.pdf${also} --date 2026-03-03 --units metric`,
    ],
    async run(args, terminal) {
      const file = args.text('output');
      if (file === undefined) {
        terminal.err(`${name} needs a file to write: -o ${name}.pdf`);
        return EXIT.input;
      }
      if (!endings.some((ending) => file.toLowerCase().endsWith(ending))) {
        terminal.err(`--output is '${file}'; ${name} writes ${endings.join(' or ')}`);
        return EXIT.input;
      }
      const date = args.text('date') ?? new Date().toISOString().slice(0, 10);
      try {
        parseDay(date);
      } catch (error) {
        terminal.err(`--${(error as Error).message}`);
        return EXIT.input;
      }
      const inputs = readRigInputs(args, terminal);
      if (inputs === undefined) return EXIT.input;
      const { rig } = inputs;
      const proof = proveRig(rig, inputs.catalogue, inputs.shop, { units: inputs.units });
      let bytes: Uint8Array | undefined;
      try {
        bytes = await write(
          rig,
          proof,
          { shop: inputs.shop, units: inputs.units, date },
          { file, args, catalogue: inputs.catalogue, terminal },
        );
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        terminal.err(`${args.positionals[0]!}: ${error.message}`);
        return EXIT.input;
      }
      if (bytes === undefined) return EXIT.input;
      try {
        writeFileSync(file, bytes);
      } catch (error) {
        const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
        terminal.err(
          `${file} cannot be written: ${missing ? 'there is no such folder' : (error as Error).message}`,
        );
        return EXIT.input;
      }
      const answer = {
        file,
        bytes: bytes.length,
        priceCents: proof.bill.priceCents,
        broken: proof.counts.broken,
      };
      terminal.out(
        args.flag('json')
          ? JSON.stringify(answer, null, 2)
          : `Written: ${file}, ${(bytes.length / 1024).toFixed(0)} KB`,
      );
      if (proof.counts.broken > 0)
        terminal.err(`${called} says that ${proof.counts.broken} promises are broken.`);
      return proof.counts.broken > 0 ? EXIT.no : EXIT.ok;
    },
  };
}
