import {
  readCatalogue,
  shopShape,
  withMoved,
  type Catalogue,
  type Shop,
} from '@spraywright/engine/catalogue';
import { formatPath, read } from '@spraywright/engine/quantity';
import { costsAsPrices, tellsCosts } from '../frame/costs-as-prices.ts';
import { fetchStart } from '../frame/fetch-start.ts';
import type { BriefTab, RigJson } from '../protocol.ts';

export interface Inputs {
  /** With what was on hand when the page was loaded. */
  readonly catalogue: Catalogue;
  /** With the stock that was laid in, and what moved of each part since. */
  readonly laidIn: Catalogue;
  readonly moved: Readonly<Record<string, number>>;
  readonly shop: Shop;
  /** False for those who do not sell: to them all stands at list prices, and what it costs is not told. */
  readonly costsTold: boolean;
  readonly briefs: readonly BriefTab[];
  /** Rig that the server chose for one of the briefs from this very catalogue. */
  readonly designed: RigJson | undefined;
  /** The files of the catalogue as they were typed. */
  readonly files: readonly { raw: unknown }[];
}

interface StartDocument {
  readonly head: unknown;
  readonly files: readonly { file: string; raw: unknown }[];
  /** Rig families of the shop's own; a page kept from before has none. */
  readonly layouts?: readonly { file: string; raw: unknown }[];
  readonly shop: unknown;
  /** What moved in the store; a page kept from before has none. */
  readonly moved?: Readonly<Record<string, number>>;
  readonly briefs: readonly unknown[];
  readonly designed?: RigJson;
}

/** Fetches what the page starts from, and reads it. */
export async function loadInputs(address: string): Promise<Inputs> {
  return readInputs(await fetchStart(address));
}

/** Reads what the page starts from with the same engine as the server does. */
export function readInputs(document: ArrayBuffer): Inputs {
  const sent = JSON.parse(new TextDecoder().decode(document)) as StartDocument;
  const costsTold = tellsCosts(sent.shop);
  const start = costsTold ? sent : costsAsPrices(sent);
  const catalogue = readCatalogue({ file: 'catalogue.json', raw: start.head }, start.files, start.layouts);
  if (!catalogue.ok) {
    const first = catalogue.problems[0]!;
    throw new Error(
      `the catalogue cannot be read: ${first.file}: ${formatPath(first.path)}: ${first.message}` +
        (catalogue.problems.length > 1 ? ` (and ${catalogue.problems.length - 1} more)` : ''),
    );
  }
  const shop = read(shopShape, start.shop);
  if (!shop.ok) throw new Error(`the shop cannot be read: ${shop.problems[0]!.message}`);
  const { moved = {} } = start;
  return {
    catalogue: withMoved(catalogue.catalogue, moved),
    laidIn: catalogue.catalogue,
    moved,
    shop: shop.value,
    costsTold,
    // Chosen at costs: to whom those are not told, all stands at other prices.
    designed: costsTold ? start.designed : undefined,
    files: start.files,
    briefs: start.briefs.map((raw) => {
      const { id = '', title = '' } = raw as { id?: string; title?: string };
      return { id, title, name: nameOf(id), raw };
    }),
  };
}

/** "tall-elms" as people say it: "Tall elms". */
function nameOf(id: string): string {
  const words = id.replaceAll('-', ' ').replace(/\b12v\b/, '12 V');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
