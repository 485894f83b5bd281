import { PALETTES, plumbingDiagram, plumbingGraph } from '@spraywright/engine/drawings';
import { shutInDuty, type Proof, type Rig } from '@spraywright/engine/rig';
import type { UnitSystem } from '@spraywright/engine/quantity';
import { buildPackPdf, buildPackXlsx } from '../documents/build-pack/build-pack-papers.ts';
import { parseDay } from '../documents/quote-terms.ts';
import { layPlumbing } from '../plumbing/lay-plumbing.ts';
import { nodeKernel } from '../plumbing/node-kernel.ts';
import { paperCommand } from './paper-command.ts';
import { SERIAL_OPTION, serialFrom } from './serial-option.ts';

/** Least width of the plumbing diagram, px. */
const WIDTH = 712;

/** Writes what a shop needs to build one machine: lists, drawings, steps with checks, labels, freight. */
export const buildPackCommand = paperCommand({
  name: 'build-pack',
  summary: 'Write what the shop needs to build one machine, as .pdf; its lists as .xlsx.',
  called: 'The proof',
  options: {
    serial: SERIAL_OPTION,
    'build-date': {
      type: 'string',
      value: 'YYYY-MM-DD',
      help: 'day on which building begins (default: the date of the paper)',
    },
  },
  example: '--serial LF-0412-1',
  async write(rig, proof, options, { file, args, catalogue }) {
    const serial = serialFrom(args);
    const buildDate = args.text('build-date') ?? options.date;
    parseDay(buildDate);
    const all = {
      ...options,
      serial,
      buildDate,
      partOf: (id: string) => catalogue.parts.get(id) ?? rig.ownParts.get(id)?.part,
      plumbing: await plumbingOnPaper(rig, proof, options.units),
    };
    return /\.xlsx$/i.test(file) ? buildPackXlsx(rig, proof, all) : buildPackPdf(rig, proof, all);
  },
});

/** The plumbing in the first duty that has a steady state, else as it stands. */
async function plumbingOnPaper(rig: Rig, proof: Proof, units: UnitSystem): Promise<string> {
  const duty = proof.duties.find((d) => d.open.status === 'converged') ?? proof.duties[0]!;
  const graph = plumbingGraph(rig, 'right');
  return plumbingDiagram(proof, graph, await layPlumbing(graph, nodeKernel()), duty.open, {
    width: WIDTH,
    units,
    palette: PALETTES.print,
    shut: shutInDuty(rig, duty.duty),
    level: duty.duty.tankLevel,
  });
}
