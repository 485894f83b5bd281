import { PALETTES, plumbingDiagram, plumbingGraph, type PlumbingRun } from '@spraywright/engine/drawings';
import type { UnitSystem } from '@spraywright/engine/quantity';
import { shutInDuty, type Proof, type Rig } from '@spraywright/engine/rig';
import { layPlumbing } from '../plumbing/lay-plumbing.ts';
import { nodeKernel } from '../plumbing/node-kernel.ts';

/** Least width of the diagram, px: across a sheet of paper, or a telephone. */
const WIDTH: Readonly<Record<PlumbingRun, number>> = { right: 712, down: 358 };

/** The plumbing of a rig for print, in the first duty that has a steady state, else as it stands. */
export async function plumbingOnPaper(
  rig: Rig,
  proof: Proof,
  units: UnitSystem,
  run: PlumbingRun,
): Promise<string> {
  const duty = proof.duties.find((d) => d.open.status === 'converged') ?? proof.duties[0]!;
  const graph = plumbingGraph(rig, run);
  return plumbingDiagram(proof, graph, await layPlumbing(graph, nodeKernel()), duty.open, {
    width: WIDTH[run],
    units,
    palette: PALETTES.print,
    shut: shutInDuty(rig, duty.duty),
    level: duty.duty.tankLevel,
  });
}
