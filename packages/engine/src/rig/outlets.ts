import type { Layout, Outlet, Work } from '../catalogue/index.ts';

/** Outlets that duties open and the rig has no line for, and lines to the air that no duty opens. */
export function outletsAmiss(rig: {
  readonly brief: { readonly duties: readonly { readonly open: readonly Outlet[] }[] };
  readonly lines: readonly { readonly to: string; readonly opens: string; readonly name: string }[];
}): { readonly missing: readonly Outlet[]; readonly idle: readonly string[] } {
  const asked = new Set(rig.brief.duties.flatMap((d) => d.open));
  const lines = rig.lines.filter((l) => l.to === 'air');
  return {
    missing: [...asked].filter((o) => !lines.some((l) => l.opens === o)),
    idle: lines.filter((l) => l.opens !== 'always' && !asked.has(l.opens as Outlet)).map((l) => l.name),
  };
}

/** Outlets that rigs of a kind of work can have, by the families there are. */
export function outletsOf(work: Work, layouts: readonly Layout[]): readonly Outlet[] {
  const lines = layouts.filter((l) => l.works.includes(work)).flatMap((l) => l.lines);
  const opened = lines.filter((l) => l.to === 'air' && l.opens !== 'always' && l.opens !== 'agitation');
  return [...new Set(opened.map((l) => l.opens as Outlet))];
}
