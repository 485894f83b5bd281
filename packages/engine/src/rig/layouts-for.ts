import type { Catalogue, Layout } from '../catalogue/index.ts';
import type { Problem } from '../quantity/index.ts';
import type { Brief } from './brief.ts';

/** The layouts a brief may be built by: the family it names, else all that serve its work. */
export function layoutsFor({ work, family }: Brief, { layouts }: Catalogue): readonly Layout[] {
  return layouts.filter((l) => l.works.includes(work) && (family === undefined || family === l.id));
}

/** What is wrong with the family that a brief names; undefined when nothing is. */
export function familyProblem({ work, family }: Brief, { name, layouts }: Catalogue): Problem | undefined {
  if (family === undefined) return undefined;
  const found = layouts.find((l) => l.id === family);
  if (found?.works.includes(work) === true) return undefined;
  return {
    path: ['family'],
    code: found === undefined ? 'unknown-reference' : 'contradiction',
    message:
      found === undefined
        ? `family is '${family}'; the catalogue '${name}' has ${layouts.map((l) => l.id).join(', ')}`
        : `family is '${family}', which serves ${found.works.join(', ')}, not '${work}'`,
  };
}
