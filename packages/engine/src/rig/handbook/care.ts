import { display, type UnitSystem } from '../../quantity/index.ts';
import { driveOf } from '../drive.ts';
import type { Proof } from '../proof/prove.ts';
import type { Rig } from '../rig-document.ts';
import { CARE_RULES, type CareTime } from './care.data.ts';

/** One thing to do at a rig. */
export interface CareStep {
  readonly text: string;
  /** Items that the step is about. */
  readonly items: readonly string[];
  readonly source: string;
}

/** What is done at one time in the life of a rig, in order: only what its own parts ask. */
export function careSteps(rig: Rig, proof: Proof, at: CareTime, units: UnitSystem): CareStep[] {
  const figures = figuresOf(rig, proof, units);
  return CARE_RULES.filter((rule) => rule.at === at).flatMap(
    ({ kinds, only, slot, text, source }): CareStep[] => {
      const items = [...rig.items.values()]
        .filter(
          ({ item, part }) =>
            kinds?.includes(part.kind) === true && (only?.(part) ?? true) && (slot ?? item.id) === item.id,
        )
        .map(({ item }) => item.id);
      if (kinds !== undefined && items.length === 0) return [];
      const named = [...text.matchAll(/\{(\w+)\}/g)].map((m) => m[1]!);
      if (named.some((name) => figures[name] === undefined)) return [];
      return [{ text: text.replace(/\{(\w+)\}/g, (_, name: string) => figures[name]!), items, source }];
    },
  );
}

/** Highest gauge pressure anywhere in the rig, in any duty, outlets open or shut [Pa]; undefined when nothing was solved. */
export function highestPressureOf(proof: Proof): number | undefined {
  const all = proof.duties.flatMap(({ open, shut }) => [
    ...open.pressureAt.values(),
    ...shut.pressureAt.values(),
  ]);
  return all.length === 0 ? undefined : all.reduce((a, b) => Math.max(a, b), 0);
}

function figuresOf(rig: Rig, proof: Proof, units: UnitSystem): Readonly<Record<string, string | undefined>> {
  const drive = driveOf(rig);
  const speed = drive?.by === 'engine' ? drive.engineSpeed : drive?.by === 'pto' ? drive.ptoSpeed : undefined;
  // What the gauge shows while it sprays: the regulator's override puts it over the pressure that it is set to.
  const shown = proof.duties.flatMap(({ name, open }) => {
    const gauge = open.pump?.outlet ?? undefined;
    return gauge === undefined ? [] : [`${display(gauge, 'pressure', units)} for ${name}`];
  });
  const shut = proof.duties.map((d) => d.shut.pump?.outlet ?? 0).reduce((a, b) => Math.max(a, b), 0);
  return {
    speed: speed === undefined ? undefined : display(speed, 'rotation', units),
    settings: shown.length === 0 ? undefined : shown.join(', '),
    shut: shut > 0 ? display(shut, 'pressure', units) : undefined,
  };
}
