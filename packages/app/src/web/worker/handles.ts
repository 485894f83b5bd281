import {
  rigViewHandles,
  sceneHandles,
  type SceneHandle,
  type ThrowSceneOptions,
} from '@spraywright/engine/drawings';
import { display, fromSi, unitOf, type Dimension, type UnitSystem } from '@spraywright/engine/quantity';
import type { DutyProof, Proof, Rig } from '@spraywright/engine/rig';
import type { Handle, HandlesPicture } from '../protocol.ts';

/** How a value is written and stepped in each unit system. */
interface Written {
  readonly dimension: Dimension;
  readonly unit: string;
  readonly step: number;
  readonly decimals: number;
}

const LEVEL: Written = { dimension: 'ratio', unit: '%', step: 5, decimals: 0 };
const FAR: Readonly<Record<UnitSystem, Written>> = {
  us: { dimension: 'length', unit: 'ft', step: 1, decimals: 1 },
  metric: { dimension: 'length', unit: 'm', step: 0.5, decimals: 1 },
};
const NEAR: Readonly<Record<UnitSystem, Written>> = {
  us: { dimension: 'length', unit: 'in', step: 1, decimals: 1 },
  metric: { dimension: 'length', unit: 'cm', step: 2, decimals: 0 },
};

const LABELS: Readonly<Record<SceneHandle['id'], string>> = {
  tankLevel: 'Level in the tank',
  hoseOut: 'Hose out',
  operator: "Operator's place, distance from the target",
  'target.standoff': 'Distance of the target',
  'target.distance': 'Distance of the target',
  'target.height': 'Height of the target',
  place: 'behind the front of the deck',
  across: 'left of the middle line of the deck',
};

/** The handles of a duty's scene with the fields that they set and the words in which they tell what follows. */
export function handlesOf(
  rig: Rig,
  proof: Proof,
  duty: DutyProof,
  options: ThrowSceneOptions,
): HandlesPicture {
  const { handles, hold } = sceneHandles(proof, duty, options);
  const told = consequence(proof, duty, options.units);
  return {
    ...(hold === undefined ? {} : { hold }),
    list: handles.map((handle) => handleOf(rig, proof, duty, handle, options.units, told)),
  };
}

/** The handles of the rig's own views, but for what can be moved in the scene already. */
export function viewHandlesOf(
  rig: Rig,
  proof: Proof,
  duty: DutyProof,
  options: ThrowSceneOptions,
  inScene: readonly Handle[],
): readonly Handle[] {
  const told = consequence(proof, duty, options.units);
  return rigViewHandles(proof, duty, options)
    .map((handle) => handleOf(rig, proof, duty, handle, options.units, told))
    .filter((handle) => !inScene.some((other) => other.id === handle.id));
}

function handleOf(
  rig: Rig,
  proof: Proof,
  duty: DutyProof,
  handle: SceneHandle,
  units: UnitSystem,
  told: string,
): Handle {
  const { id, item, x, y, width, height, axis, along } = handle;
  const placed = id === 'place' || id === 'across';
  const written = id === 'tankLevel' ? LEVEL : placed ? NEAR[units] : FAR[units];
  const shown = (value: number) => fromSi(value, unitOf(written.unit, written.dimension)!);
  const step = (perPixel: number) => shown(perPixel) - shown(0);
  const name = proof.parts.find((p) => p.item === item)?.name ?? '';
  return {
    id: item === undefined ? id : `${id}-${item}`,
    ...fieldOf(rig, duty, handle),
    label: item === undefined ? LABELS[id] : `${name}, its middle ${LABELS[id]}`,
    ...(item === undefined ? {} : { item }),
    x,
    y,
    width,
    height,
    axis,
    perPixel: step(handle.perPixel),
    value: shown(handle.value),
    min: shown(handle.min),
    max: shown(handle.max),
    step: written.step,
    decimals: written.decimals,
    unit: written.unit,
    ...(along === undefined
      ? {}
      : {
          along: {
            within: 'x',
            perPixel: step(along.perPixel),
            value: shown(along.value),
            min: shown(along.min),
            max: shown(along.max),
          },
        }),
    keeps: id === 'operator' ? 'target' : 'operator',
    told: placed ? `${told}${lean(proof, units)}` : told,
  };
}

/** How the moved part shifts the balance, in words. */
function lean({ placement }: Proof, units: UnitSystem): string {
  if (placement === undefined) return '';
  const { y } = placement.centre.full;
  const size = display(Math.abs(y), 'length', units);
  return Math.abs(y) < 0.005
    ? '; the mass lies on the middle line when full'
    : `; the mass lies ${size} ${y > 0 ? 'left' : 'right'} of the middle line when full`;
}

/** The field of the document, and what else of it stays. */
function fieldOf(rig: Rig, { duty }: DutyProof, { id, item }: SceneHandle): Pick<Handle, 'path' | 'within'> {
  const at = `brief.duties.${rig.brief.duties.findIndex((d) => d.id === duty.id)}`;
  if (id === 'place' || id === 'across') {
    const index = rig.document.items.findIndex((i) => i.id === item);
    return { path: `items.${index}.at`, within: id === 'place' ? 'x' : 'y' };
  }
  if (id === 'operator')
    return { path: `${at}.target.${duty.target?.aim === 'height' ? 'standoff' : 'distance'}` };
  return { path: `${at}.${id}` };
}

/** What the rig then does, as a screen reader says it after the value. */
function consequence(proof: Proof, duty: DutyProof, units: UnitSystem): string {
  const { broken } = proof.counts;
  const promises = `${broken} ${broken === 1 ? 'promise' : 'promises'} broken`;
  if (duty.reach === undefined) return promises;
  return `9 times in 10 it reaches ${display(duty.reach.promised, 'length', units)}, ${promises}`;
}
