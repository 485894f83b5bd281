import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Catalogue, Shop } from '@spraywright/engine/catalogue';
import { readRig, type Rig } from '@spraywright/engine/rig';
import { readCatalogueFolder, readJsonFile, readShopFile } from '../documents/catalogue-folder.ts';
import { located, problemText, type JsonSource, type LocatedProblem } from '../documents/json-source.ts';
import type { Arguments, Terminal } from './command.ts';
import { mistakenKind, type DocumentKind } from './document-kind.ts';

/** The demo that comes with the project, from this file's place in `src/cli` or `dist/cli`. */
export const DEMO = fileURLToPath(new URL('../../../../demo/', import.meta.url));

export type UnitSystem = 'us' | 'metric';

/** Everything a command computes with; problems have been printed when it is undefined. */
export interface Inputs {
  readonly catalogue: Catalogue;
  readonly shop: Shop;
  readonly units: UnitSystem;
}

/** Reads catalogue, shop and units of a command; prints every problem and returns undefined when something is wrong. */
export function readInputs(args: Arguments, terminal: Terminal): Inputs | undefined {
  const units = args.text('units') ?? 'us';
  if (units !== 'us' && units !== 'metric') {
    terminal.err(`--units is '${units}'; it must be us or metric`);
    return undefined;
  }
  const catalogue = readCatalogueFolder(args.text('catalogue') ?? `${DEMO}catalogue`);
  const shop = readShopFile(args.text('shop') ?? `${DEMO}shop.json`);
  if (!catalogue.ok) printProblems(catalogue.problems, terminal);
  if (!shop.ok) printProblems(shop.problems, terminal);
  return catalogue.ok && shop.ok ? { catalogue: catalogue.catalogue, shop: shop.shop, units } : undefined;
}

/** A rig of the command line with everything it is proven with. */
export interface RigInputs extends Inputs {
  readonly source: JsonSource;
  readonly rig: Rig;
}

/** Reads the inputs and the rig that a command names first; prints every problem and returns undefined when something is wrong. */
export function readRigInputs(args: Arguments, terminal: Terminal): RigInputs | undefined {
  const inputs = readInputs(args, terminal);
  const source = readSource(args.positionals[0]!, 'rig', terminal);
  if (inputs === undefined || source === undefined) return undefined;
  const read = readRig(source.raw, inputs.catalogue);
  if (read.ok) return { ...inputs, source, rig: read.rig };
  printProblems(located(source, read.problems), terminal);
  return undefined;
}

/** Reads one JSON file, or a demo file by its bare name; a document of another kind than the one wanted is said to be one. */
export function readSource(
  path: string,
  wanted: DocumentKind | 'any',
  terminal: Terminal,
): JsonSource | undefined {
  const demo = `${DEMO}briefs/${path}.json`;
  const file = readJsonFile(!existsSync(path) && /^[a-z0-9-]+$/.test(path) && existsSync(demo) ? demo : path);
  if (!file.ok) {
    printProblems(file.problems, terminal);
    return undefined;
  }
  const mistaken = mistakenKind(file.source, wanted);
  if (mistaken === undefined) return file.source;
  terminal.err(mistaken);
  return undefined;
}

export function printProblems(problems: readonly LocatedProblem[], terminal: Terminal): void {
  problems.forEach((p) => terminal.err(problemText(p)));
}
