import {
  catalogueOf,
  type Catalogue,
  type Part,
  type RigPricing,
  type Shop,
} from '@spraywright/engine/catalogue';
import { PALETTES, throwScene } from '@spraywright/engine/drawings';
import type { UnitSystem } from '@spraywright/engine/quantity';
import { ENGINE_VERSION, proveRig, readRig, type Proof } from '@spraywright/engine/rig';
import { shownDuty } from '../quote-first-sheet.ts';
import { summaryOf, type OptionSummary } from './option-summary.ts';

/** One rig of a quote with all that its proof needs, so that the catalogue may change under it. */
export interface FrozenOption {
  readonly name: string;
  /** Job whose rig it is; absent for a rig that was sent along. */
  readonly job?: string;
  /** The rig's document with its brief and its own pricing. */
  readonly rig: Readonly<Record<string, unknown>>;
  /** Own copy of every part that the rig and its bill use. */
  readonly parts: readonly Part[];
  readonly summary: OptionSummary;
  /** The throw to scale, for a telephone. */
  readonly scene: string;
}

/** One revision of a quote: everything that is printed or told of it. */
export interface FrozenQuote {
  readonly format: 'spraywright-quote';
  readonly number: string;
  readonly revision: string;
  /** Day of the quote, YYYY-MM-DD. */
  readonly date: string;
  readonly units: UnitSystem;
  readonly engineVersion: string;
  readonly catalogue: { readonly name: string; readonly version: number };
  /** The shop with deposit, validity and terms as this quote gives them. */
  readonly shop: Shop;
  /** A word to the customer; empty when there is none. */
  readonly note: string;
  /** Day until which it holds, YYYY-MM-DD. */
  readonly validUntil: string;
  readonly options: readonly FrozenOption[];
}

/** What a revision is made of. */
export interface QuoteContents {
  readonly date: string;
  readonly units: UnitSystem;
  readonly note: string;
  readonly depositPercent?: number;
  readonly validDays?: number;
  readonly terms?: readonly string[];
  /** Day on which a rig that is ordered on the day of the quote is ready, by its hours and its parts. */
  readonly readyDay: (build: { labourHours: number; partsInDays: number }) => string;
  readonly options: readonly {
    readonly name: string;
    readonly job?: string;
    readonly rig: Readonly<Record<string, unknown>>;
    readonly pricing?: RigPricing;
  }[];
}

/** A field that keeps a quote from being made. */
interface QuoteProblem {
  readonly field: string;
  readonly code: string;
  readonly message: string;
}

export type ProvenQuote =
  | {
      readonly ok: true;
      readonly name: (name: { number: string; revision: string }) => FrozenQuote;
      readonly proofs: readonly Proof[];
    }
  | { readonly ok: false; readonly problems: readonly QuoteProblem[] };

const DAY = 86_400_000;

/** Proves every option and freezes it with its parts; number and revision are given last, when the records know them. */
export function freezeQuote(contents: QuoteContents, catalogue: Catalogue, usualShop: Shop): ProvenQuote {
  const shop: Shop = {
    ...usualShop,
    depositPercent: contents.depositPercent ?? usualShop.depositPercent,
    validDays: contents.validDays ?? usualShop.validDays,
    terms: [...(contents.terms ?? usualShop.terms)],
  };
  const problems: QuoteProblem[] = [];
  const proven = contents.options.flatMap(({ name, job, rig: raw, pricing }, i) => {
    const own = (raw as { pricing?: RigPricing }).pricing;
    const document = pricing === undefined ? raw : { ...raw, pricing: { ...own, ...pricing } };
    const read = readRig(document, catalogue);
    if (!read.ok) {
      problems.push(
        ...read.problems.map(({ path, code, message }) => ({
          field: ['options', i, 'rig', ...path].join('.'),
          code,
          message: `option '${name}': ${message}`,
        })),
      );
      return [];
    }
    const proof = proveRig(read.rig, catalogue, shop, { units: contents.units });
    const parts = partsUsed(proof, catalogue);
    return [
      {
        proof,
        option: {
          name,
          ...(job === undefined ? {} : { job }),
          rig: document,
          parts,
          summary: summaryOf(proof, shop, contents.units, contents.readyDay),
          scene: sceneOf(proof, contents.units),
        },
      },
    ];
  });
  if (problems.length > 0) return { ok: false, problems };
  const { date, units, note } = contents;
  const validUntil = new Date(Date.parse(`${date}T00:00:00Z`) + shop.validDays * DAY)
    .toISOString()
    .slice(0, 10);
  return {
    ok: true,
    proofs: proven.map((p) => p.proof),
    name: ({ number, revision }) => ({
      format: 'spraywright-quote',
      number,
      revision,
      date,
      units,
      engineVersion: ENGINE_VERSION,
      catalogue: { name: catalogue.name, version: catalogue.version },
      shop,
      note,
      validUntil,
      options: proven.map((p) => p.option),
    }),
  };
}

/**
 * The proof of an option from its own copy of parts and shop: the same figures whatever the catalogue says by now.
 *
 * @throws RangeError when this engine cannot read what was frozen
 */
export function proveFrozen(quote: FrozenQuote, option: FrozenOption): Proof {
  const catalogue = catalogueOf(quote.catalogue.name, quote.catalogue.version, option.parts);
  const read = readRig(option.rig, catalogue);
  if (!read.ok)
    throw new RangeError(
      `${quote.number} ${quote.revision}, option '${option.name}': ${read.problems[0]?.message ?? 'the rig cannot be read'}`,
    );
  return proveRig(read.rig, catalogue, quote.shop, { units: quote.units });
}

/** Width of the scene [px at 1 to 1]. */
const SCENE = { width: 390, height: 250 } as const;

function sceneOf(proof: Proof, units: UnitSystem): string {
  return throwScene(proof, shownDuty(proof), { ...SCENE, units, palette: PALETTES.print });
}

/** Parts of a rig and of its bill that the catalogue holds; parts of the rig's own stand in its document. */
function partsUsed(proof: Proof, catalogue: Catalogue): Part[] {
  const ids = new Set([
    ...proof.parts.map((p) => p.part),
    ...proof.bill.lines.flatMap((line) => (line.part === undefined ? [] : [line.part])),
  ]);
  return [...ids].sort().flatMap((id) => catalogue.parts.get(id) ?? []);
}
