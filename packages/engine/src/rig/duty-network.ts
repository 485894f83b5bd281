import type { Kind, Part, PartOf } from '../catalogue/index.ts';
import type {
  ElementLaw,
  NetworkElement,
  NetworkLiquid,
  NetworkModel,
  NetworkNode,
  PressurePoint,
} from '../hydraulics/index.ts';
import type { Duty } from './brief.ts';
import { driveOf } from './drive.ts';
import { elbowK, teeBranchK, teeRunK, valveK } from './fitting-loss.ts';
import { first, type Rig, type RigItem, type RigLine } from './rig-document.ts';
import { meanCoilDiameter } from './reel-drum.ts';
import { liquidDepth } from './tank-level.ts';

/** One outlet of a duty: the line that leads to it and the element at its end. */
interface OpenOutlet {
  readonly line: string;
  /** Element that discharges, and the node in front of it. */
  readonly last: number;
  readonly before: number;
}

/** One element of a line between its nodes, with the item it stands for: none for bends and branches. */
export interface LineElement {
  readonly element: number;
  readonly from: number;
  readonly to: number;
  readonly item: string | undefined;
}

/** A rig in one duty as a network, with the way back from elements to items. Elements and nodes go by their place in the model. */
export interface DutyNetwork {
  readonly model: NetworkModel;
  readonly outlets: readonly OpenOutlet[];
  /** Elements of each line in flow order. */
  readonly lines: ReadonlyMap<string, readonly LineElement[]>;
  /** Elements that shut all open outlets when the trigger is let go: guns, valves, or the first part of a line without either. */
  readonly triggers: readonly number[];
  /** Suction strainers, with their flow factor clean and at the state in which they must be cleaned. */
  readonly strainers: readonly { readonly element: number; readonly clean: number; readonly dirty: number }[];
}

const BAR = 1e5;
/** A length of hose that takes no pressure worth the name [m]. */
const LEAST_PIECE = 1e-3;
/** Height of the outlet above the ground when a duty does not say: a hand gun, a boom, a bar, a filler neck [m]. */
const OUTLET_HEIGHT = { gun: 1.5, 'second-gun': 1.5, boom: 0.6, bar: 0.4, transfer: 1.2 } as const;

/**
 * Makes the network of a rig in one duty with its strainers clean: every line's parts in series, closed lines shut at
 * their gun or first part, the tank at its level, hose not paid out wound on the reel, the outlet at its height.
 */
export function dutyNetwork(rig: Rig, duty: Duty, liquid: NetworkLiquid): DutyNetwork {
  const carrier = first(rig, 'carrier');
  const deck = carrier?.part.deckHeight ?? 0;
  const tank = first(rig, 'tank')!.part;
  const nodes: NetworkNode[] = [
    { id: 'tank', elevation: deck, surface: deck + liquidDepth(tank, duty.tankLevel) },
  ];
  for (const n of rig.document.nodes) nodes.push({ id: n.id, elevation: deck + n.height });
  const elements: NetworkElement[] = [];
  const outlets: OpenOutlet[] = [];
  const triggers: number[] = [];
  const strainers: { element: number; clean: number; dirty: number }[] = [];
  const lines = new Map<string, LineElement[]>();
  const nodeOf = new Map(nodes.map((n, i) => [n.id, i]));

  for (const line of rig.lines) {
    const isOpen = opensIn(line, duty);
    const toAir = line.to === 'air';
    if (toAir) {
      nodeOf.set(`${line.id}.air`, nodes.length);
      nodes.push({ id: `${line.id}.air`, elevation: outletHeightOf(line, duty), atmosphere: true });
    }
    const start = nodeOf.get(line.from)!;
    const end = nodeOf.get(toAir ? `${line.id}.air` : line.to)!;
    const startHeight = nodes[start]!.elevation;
    const endHeight = nodes[end]!.elevation;
    const pieces = piecesOf(rig, line, duty);
    const shutter = shutterOf(pieces);
    const run: LineElement[] = [];
    let from = start;
    pieces.forEach((piece, k) => {
      const last = k === pieces.length - 1;
      const to = last ? end : nodes.length;
      // Parts before the first hose stand with the machinery; what follows is carried to the outlet's height.
      if (!last)
        nodes.push({
          id: `${line.id}.${k + 1}`,
          elevation: piece.beyondHose ? endHeight : startHeight,
        });
      const element = elements.length;
      elements.push({
        id: piece.id,
        from: nodes[from]!.id,
        to: nodes[to]!.id,
        law: piece.law,
        count: piece.count,
        open: isOpen || k !== shutter,
      });
      run.push({ element, from, to, item: piece.item });
      if (toAir && isOpen) {
        if (k === shutter) triggers.push(element);
        if (last) outlets.push({ line: line.id, last: element, before: from });
      }
      if (piece.dirty !== undefined) strainers.push({ element, ...piece.dirty });
      from = to;
    });
    lines.set(line.id, run);
  }
  return { model: { liquid, nodes, elements }, outlets, lines, triggers, strainers };
}

/** Height of a line's outlet above the ground in a duty [m]. */
export function outletHeightOf(line: Pick<RigLine, 'opens'>, duty: Duty): number {
  return duty.outletHeight ?? OUTLET_HEIGHT[line.opens as keyof typeof OUTLET_HEIGHT] ?? 0;
}

/** Whether a line passes liquid in a duty. */
export function opensIn(line: RigLine, duty: Duty): boolean {
  if (line.opens === 'always') return true;
  if (line.opens === 'agitation') return duty.agitate;
  return duty.open.includes(line.opens);
}

/** The piece that shuts a line: its gun, else its first valve, else its first part. */
function shutterOf(run: readonly Piece[]): number {
  const gun = run.findIndex((piece) => piece.kind === 'gun');
  return gun >= 0
    ? gun
    : Math.max(
        0,
        run.findIndex((piece) => piece.kind === 'valve'),
      );
}

interface Piece {
  readonly id: string;
  readonly item: string | undefined;
  readonly law: ElementLaw;
  readonly count: number;
  readonly beyondHose: boolean;
  readonly kind: Kind | undefined;
  readonly dirty: { readonly clean: number; readonly dirty: number } | undefined;
}

const sameInAll = new WeakMap<Rig, Map<RigLine, readonly Piece[] | undefined>>();

/** Pieces of a line: made once per rig where no duty changes them, that is for all lines but a few. */
function piecesOf(rig: Rig, line: RigLine, duty: Duty): readonly Piece[] {
  let known = sameInAll.get(rig);
  if (known === undefined) sameInAll.set(rig, (known = new Map<RigLine, readonly Piece[] | undefined>()));
  let pieces = known.get(line);
  if (pieces === undefined) {
    pieces = piecesIn(rig, line, duty);
    known.set(line, hangsOnDuty(rig, line) ? undefined : pieces);
  }
  return pieces;
}

/** Hose to the air may be paid out more or less, and a regulator may be set by duty. */
function hangsOnDuty(rig: Rig, { run, to }: RigLine): boolean {
  return run.some((id) => {
    const { item, part } = rig.items.get(id)!;
    return (part.kind === 'hose' && to === 'air') || item.setByDuty !== undefined;
  });
}

function piecesIn(rig: Rig, line: RigLine, duty: Duty): Piece[] {
  const pieces: Piece[] = [];
  let beyondHose = false;
  let reel: PartOf<'reel'> | undefined;
  const add = (id: string, item: string | undefined, law: ElementLaw, count = 1) =>
    pieces.push({ id, item, law, count, beyondHose, kind: undefined, dirty: undefined });
  const bore = boreOf(rig, line);
  const k = line.elbows * elbowK(bore) + line.teesRun * teeRunK(bore) + line.teesBranch * teeBranchK(bore);
  if (k > 0)
    add(`${line.id}.fittings`, undefined, {
      kind: 'fitting',
      bore,
      lossCoefficient: k,
      laminarCoefficient: 800,
    });
  for (const id of line.run) {
    const { item, part } = rig.items.get(id)!;
    switch (part.kind) {
      case 'hose': {
        const outside = line.to === 'air' ? Math.min(duty.hoseOut ?? Infinity, item.length!) : item.length!;
        // With a reel both pieces are always there, so that all duties of a rig share one network.
        const wound = reel === undefined ? 0 : Math.max(LEAST_PIECE, item.length! - outside);
        if (reel !== undefined)
          add(`${id}.wound`, id, {
            kind: 'pipe',
            length: wound,
            bore: part.bore,
            roughness: part.roughness,
            coilDiameter: meanCoilDiameter(reel, part, wound),
          });
        const straight = reel === undefined ? item.length! : outside;
        if (line.to === 'air') beyondHose = true;
        add(id, id, {
          kind: 'pipe',
          length: Math.max(LEAST_PIECE, straight),
          bore: part.bore,
          roughness: part.roughness,
        });
        break;
      }
      case 'reel':
        reel = part;
        add(id, id, flowFactor(part.flowAtOneBar));
        break;
      case 'boom':
        // A section fed at its middle loses about 0.37 of what its half would lose at full flow (Christiansen's multiple-outlet factor, from memory).
        add(
          id,
          id,
          {
            kind: 'pipe',
            length: (0.37 * part.width) / (2 * part.sections),
            bore: part.bore,
            roughness: 1.5e-6,
          },
          2 * part.sections,
        );
        break;
      case 'nozzle': {
        const boom = first(rig, 'boom')?.part;
        add(id, id, { kind: 'orifice', k: part.flowAtOneBar / Math.sqrt(BAR) }, boom?.nozzles ?? item.count);
        break;
      }
      default:
        pieces.push({
          id,
          item: id,
          law: lawOf(rig, item, part, duty),
          count: item.count,
          beyondHose,
          kind: part.kind,
          dirty: part.kind === 'strainer' ? strainerFactors(part) : undefined,
        });
    }
  }
  return pieces;
}

/** Law of a part that is one element whatever the duty. */
function lawOf(rig: Rig, item: RigItem, part: Part, duty: Duty): ElementLaw {
  switch (part.kind) {
    case 'pump': {
      const speed = driveOf(rig)?.pumpSpeed ?? 0;
      const { law } = part;
      if (law.action === 'centrifugal')
        return {
          kind: 'centrifugal-pump',
          curve: law.curve,
          speed: speed / law.ratedSpeed,
          ratedPressure: part.maxPressure,
        };
      return {
        kind: 'positive-displacement-pump',
        displacement: law.displacement,
        speed,
        slip: (law.slipAtMaxPressure * law.displacement * part.maxSpeed) / part.maxPressure,
        viscosityExponent: law.mechanism === 'roller' || law.mechanism === 'gear' ? 1 : 0,
        ratedPressure: part.maxPressure,
      };
    }
    case 'motor-pump':
      return {
        kind: 'demand-pump',
        curve: fallingCurve(part),
        switchOff: part.switchOff,
        switchOn: part.switchOn,
      };
    case 'strainer':
      return flowFactor(part.flowAtOneBar);
    case 'valve':
      if (part.flowAtOneBar !== undefined) return flowFactor(part.flowAtOneBar);
      if (part.form === 'swing-check' || part.form === 'lift-check')
        return { kind: 'check-valve', bore: part.bore, lossCoefficient: valveK(part.form, part.bore) };
      return {
        kind: 'fitting',
        bore: part.bore,
        lossCoefficient: valveK(part.form, part.bore),
        laminarCoefficient: 500,
      };
    case 'regulator': {
      const gradient = part.overridePressure / part.ratedFlow;
      const setPressure = item.setByDuty?.[duty.id] ?? item.set ?? part.setMax;
      const k = part.flowAtOneBar / Math.sqrt(BAR);
      return part.action === 'reducing'
        ? { kind: 'reducing-regulator', setPressure, gradient, k }
        : {
            kind:
              part.action === 'bypass'
                ? 'back-pressure-regulator'
                : part.action === 'relief'
                  ? 'relief-valve'
                  : 'unloader',
            setPressure,
            gradient,
            k,
          };
    }
    case 'agitator':
      return { kind: 'jet-agitator', k: part.flowAtOneBar / Math.sqrt(BAR) };
    case 'eductor':
      return { kind: 'jet-agitator', k: part.flowAtOneBar / Math.sqrt(BAR) };
    case 'tip':
      return { kind: 'orifice', k: part.flowAtOneBar / Math.sqrt(BAR) };
    case 'gun':
      return flowFactor(part.flowAtOneBar);
    case 'fitting':
      return {
        kind: 'fitting',
        bore: part.bore,
        lossCoefficient: part.form === 'elbow' ? elbowK(part.bore) : teeRunK(part.bore),
        laminarCoefficient: 500,
      };
    default:
      throw new RangeError(`a ${part.kind} has no hydraulic law`);
  }
}

/** A dirty strainer takes its stated multiple of the clean loss, so its flow factor falls with the root of it. */
function strainerFactors(part: PartOf<'strainer'>): { clean: number; dirty: number } {
  const clean = part.flowAtOneBar / Math.sqrt(BAR);
  return { clean, dirty: clean / Math.sqrt(part.dirtyFactor) };
}

function flowFactor(flowAtOneBar: number): ElementLaw {
  return { kind: 'flow-factor', k: flowAtOneBar / Math.sqrt(BAR) };
}

/** Bore at which a line's bends and branches are reckoned: that of its hose, else of its first valve or part. */
function boreOf(rig: Rig, line: RigLine): number {
  const parts = line.run.map((id) => rig.items.get(id)!.part);
  const hose = parts.find((p) => p.kind === 'hose');
  if (hose !== undefined) return hose.bore;
  const valve = parts.find((p) => p.kind === 'valve');
  return valve?.bore ?? parts[0]?.ports[0]?.size ?? 0.0254;
}

const curves = new WeakMap<PartOf<'motor-pump'>, readonly PressurePoint[]>();

/** A demand pump's curve with flow rising, made once per part. */
function fallingCurve(pump: PartOf<'motor-pump'>): readonly PressurePoint[] {
  let curve = curves.get(pump);
  if (curve === undefined) {
    curve = [...pump.curve].reverse().map(({ flow, pressure }) => ({ flow, pressure }));
    curves.set(pump, curve);
  }
  return curve;
}
