import type { ElementResult, NetworkResult } from '@spraywright/engine/hydraulics';
import { display, type Dimension, type UnitSystem } from '@spraywright/engine/quantity';
import { table } from './text-table.ts';

const FIGURES = { node: [1, 2, 3], element: [4, 5, 6, 7, 8] };

/** A solved network in two tables, with whatever a person should know about it. */
export function networkTable(result: NetworkResult, units: UnitSystem): string {
  if (result.status === 'failed') return failureText(result);
  const { nodes, elements, notes, iterations, residual } = result;
  const figure = (value: number | null | undefined, dimension: Dimension): string =>
    value === null || value === undefined ? '-' : display(value, dimension, units);
  return [
    table(
      ['node', 'elevation', 'total head', 'pressure'],
      nodes.map((n) => [
        n.id,
        display(n.elevation, 'length', units, { as: 'head' }),
        n.head === null ? 'undefined' : display(n.head, 'length', units, { as: 'head' }),
        n.pressure === null ? 'undefined' : display(n.pressure, 'pressure', units),
      ]),
      FIGURES.node,
    ),
    '',
    table(
      ['element', 'kind', 'from', 'to', 'flow', 'speed', 'pressure in', 'pressure out', 'drop', 'state'],
      elements.map((e) => [
        e.id,
        e.kind,
        e.from,
        e.to,
        figure(e.flow, 'flow'),
        e.velocity === null ? '-' : display(e.velocity, 'speed', units, { as: 'liquid-speed' }),
        figure(e.pressureIn, 'pressure'),
        figure(e.pressureOut, 'pressure'),
        figure(e.pressureDrop, 'pressure'),
        e.state,
      ]),
      FIGURES.element,
    ),
    '',
    ...elements.flatMap((e) => swingText(e, units)),
    ...elements.flatMap((e) =>
      e.suctionFlow === undefined ? [] : [`${e.id} draws in ${display(e.suctionFlow, 'flow', units)}.`],
    ),
    ...notes.map((n) => `Note: ${n.message}.`),
    `Solved in ${iterations} steps; largest imbalance at a node ${(residual ?? 0).toExponential(1)} of the largest flow.`,
  ].join('\n');
}

function failureText(result: NetworkResult): string {
  if (result.problems !== undefined)
    return ['The network cannot be solved:', ...result.problems.map((p) => `  ${p.message}`)].join('\n');
  return `No steady state: ${result.reason?.message ?? 'the solver gave no reason'}.`;
}

function swingText(e: ElementResult, units: UnitSystem): string[] {
  if (e.cycling === undefined) return [];
  const { flowAtSwitchOn, flowAtSwitchOff } = e.cycling;
  return [
    `${e.id} swings between ${display(flowAtSwitchOn, 'flow', units)} and ${display(flowAtSwitchOff, 'flow', units)} as the pump switches on and off.`,
  ];
}
