import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Catalogue, Shop } from '@spraywright/engine/catalogue';
import { designRig, readRig, type Rig } from '@spraywright/engine/rig';
import { readCatalogueFolder, readShopFile } from '../src/documents/catalogue-folder.ts';

/** The demo as tests use it; a problem in it fails the test that asks. */
export const DEMO = fileURLToPath(new URL('../../../demo/', import.meta.url));

export function demoCatalogue(): Catalogue {
  const result = readCatalogueFolder(`${DEMO}catalogue`);
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.file}:${p.line}: ${p.message}`).join('\n'));
  return result.catalogue;
}

export function demoShop(): Shop {
  const result = readShopFile(`${DEMO}shop.json`);
  if (!result.ok) throw new Error(result.problems.map((p) => p.message).join('\n'));
  return result.shop;
}

export function demoBriefs(): { name: string; raw: unknown }[] {
  return readdirSync(`${DEMO}briefs`)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => ({
      name: name.replace('.json', ''),
      raw: JSON.parse(readFileSync(`${DEMO}briefs/${name}`, 'utf8')) as unknown,
    }));
}

/** The rig that the selection finds for a demo brief, as a raw document and read. */
export function demoRig(name: string, catalogue: Catalogue, shop: Shop): { raw: unknown; rig: Rig } {
  const brief = demoBriefs().find((b) => b.name === name);
  if (brief === undefined) throw new Error(`there is no demo brief '${name}'`);
  const design = designRig(brief.raw, catalogue, shop);
  if (!design.ok) throw new Error(design.problems.map((p) => p.message).join('\n'));
  const rig = readRig(design.rig, catalogue);
  if (!rig.ok) throw new Error(rig.problems.map((p) => p.message).join('\n'));
  return { raw: design.rig, rig: rig.rig };
}
