import * as drawings from '@spraywright/engine/drawings';
import { display, type UnitSystem } from '@spraywright/engine/quantity';
import {
  shutInDuty,
  valvesOf,
  valveState,
  type DutyProof,
  type DutyState,
  type Proof,
  type Rig,
  type RigValve,
} from '@spraywright/engine/rig';
import type { PlumbingPicture, ValveRow, View } from '../protocol.ts';
import { outletsSaid } from './outlets-said.ts';

/** What must be laid out anew when it changes. */
export function plumbingKey(rig: Rig, view: View): string {
  const run = runOf(view);
  return JSON.stringify([run, rig.lines.map((l) => [l.id, l.from, l.to, l.run])]);
}

export function plumbingOf(rig: Rig, view: View): drawings.PlumbingGraph {
  return drawings.plumbingGraph(rig, runOf(view));
}

function runOf(view: View): drawings.PlumbingRun {
  return view.upright ? 'down' : 'right';
}

/** The plumbing in the state in which its valves stand, and what turning each valve would do. */
export function plumbingPicture(
  rig: Rig,
  proof: Proof,
  duty: DutyProof,
  layout: drawings.PlumbingLayout,
  view: View,
): PlumbingPicture {
  const tried = new Set(view.tried);
  const inDuty = shutInDuty(rig, duty.duty);
  const shut = new Set([...inDuty, ...tried]);
  const state = tried.size === 0 ? duty.open : valveState(rig, duty.duty, tried);
  const graph = plumbingOf(rig, view);
  const svg = drawings.plumbingDiagram(proof, graph, layout, state, {
    width: view.curveWidth,
    units: view.units,
    palette: drawings.PALETTES[view.sheet],
    lit: view.lit,
    shut,
    level: duty.duty.tankLevel,
  });
  const numbers = drawings.partNumbers(proof);
  return {
    svg,
    now: stateWords(state, view.units),
    tried: tried.size > 0,
    valves: valvesOf(rig).map((valve): ValveRow => {
      const open = !shut.has(valve.item);
      return {
        item: valve.item,
        number: numbers.get(valve.item) ?? 0,
        name: proof.parts.find((p) => p.item === valve.item)?.name ?? valve.item,
        open,
        ...turnOf(rig, duty, valve, open),
        would: wouldWords(rig, duty, valve, tried, open, view.units),
      };
    }),
  };
}

/** A valve that opens an outlet or the stirring belongs to the duty; any other is only tried, and so is shutting the last outlet. */
function turnOf(
  rig: Rig,
  { duty }: DutyProof,
  { leads, line }: RigValve,
  open: boolean,
): Pick<ValveRow, 'puts'> {
  const at = `brief.duties.${rig.brief.duties.findIndex((d) => d.id === duty.id)}`;
  if (!leads || line.opens === 'always') return {};
  if (line.opens === 'agitation') return { puts: { path: `${at}.agitate`, value: !open } };
  const { opens } = line;
  const next = open ? duty.open.filter((o) => o !== opens) : [...duty.open, opens];
  const target = duty.target !== undefined && open && opens.endsWith('gun');
  return next.length === 0 || target ? {} : { puts: { path: `${at}.open`, value: next } };
}

function wouldWords(
  rig: Rig,
  { duty }: DutyProof,
  valve: RigValve,
  tried: ReadonlySet<string>,
  open: boolean,
  units: UnitSystem,
): string {
  const others = new Set([...tried].filter((item) => item !== valve.item));
  const { opens } = valve.line;
  const turned = open
    ? valveState(rig, duty, new Set([...others, valve.item]))
    : tried.has(valve.item)
      ? valveState(rig, duty, others)
      : valveState(
          rig,
          opens === 'agitation'
            ? { ...duty, agitate: true }
            : opens === 'always'
              ? duty
              : { ...duty, open: [...duty.open, opens] },
          others,
        );
  return `${open ? 'Shut' : 'Open'}: ${stateWords(turned, units)}`;
}

/** Flow that counts as none [m3/s]. */
const STILL = 1e-8;
/** A pump that draws against less than this is starved, whatever it needs [Pa]. */
const STARVED = -9e4;

/** A state in a line: what comes out, the pump, and what must not be. */
function stateWords(state: DutyState, units: UnitSystem): string {
  if (state.status === 'failed') return `no steady state, ${state.reason ?? 'no reason is known'}`;
  const outlets = state.outlets.filter((o) => o.flow > STILL);
  const { pump } = state;
  const words = [outlets.length === 0 ? 'nothing comes out' : outletsSaid(outlets, units).join(', ')];
  if (pump !== undefined && pump.flow < STILL)
    words.push(
      pump.inlet === null
        ? 'the pump gets no liquid: it must not turn dry'
        : state.states.get(pump.item) === 'cycling'
          ? 'its switch stops the pump'
          : `the pump turns against a shut line${pump.outlet === null ? '' : ` at ${display(pump.outlet, 'pressure', units)}`}`,
    );
  else if (pump?.outlet !== undefined && pump.outlet !== null)
    words.push(
      `${display(pump.flow, 'flow', units)} at ${display(pump.outlet, 'pressure', units)} at the pump`,
    );
  if (pump?.inlet !== undefined && pump.inlet !== null && pump.inlet < STARVED)
    words.push('the pump starves: never while it turns');
  return words.join(', ');
}
