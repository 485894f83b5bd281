import { catalogueOf, type Catalogue, type Part } from '../catalogue/index.ts';

/** Whether none of a part's wetted materials is unsuited. */
export function stands(part: Part, unsuited: ReadonlySet<string>): boolean {
  return !part.wetted.some((w) => unsuited.has(w.material));
}

/** The catalogue without the parts that the brief's liquids destroy. */
export function suitedCatalogue(catalogue: Catalogue, unsuited: ReadonlySet<string>): Catalogue {
  const parts = [...catalogue.parts.values()].filter((part) => stands(part, unsuited));
  return catalogueOf(catalogue.name, catalogue.version, parts, catalogue);
}
