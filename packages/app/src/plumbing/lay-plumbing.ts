import type { PlumbingGraph, PlumbingLayout } from '@spraywright/engine/drawings';
import type { ElkExtendedEdge, ElkNode, LayoutOptions } from 'elkjs/lib/elk-api.js';

/** The layout kernel, in a worker of the page or within Node. */
export interface LayoutKernel {
  layout(graph: ElkNode): Promise<ElkNode>;
}

const SIDES = { left: 'WEST', right: 'EAST', top: 'NORTH', bottom: 'SOUTH' } as const;

/** Layers in the order of the flow, lines at right angles, everything in the order of the rig's document. */
const OPTIONS: LayoutOptions = {
  'elk.algorithm': 'layered',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.randomSeed': '1',
  'elk.padding': '[top=0,left=0,bottom=0,right=0]',
  'elk.spacing.nodeNode': '16',
  'elk.spacing.edgeNode': '12',
  'elk.spacing.edgeEdge': '12',
  'elk.spacing.portPort': '18',
  'elk.layered.spacing.nodeNodeBetweenLayers': '14',
  'elk.layered.spacing.edgeNodeBetweenLayers': '10',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '10',
  'elk.layered.considerModelOrder.strategy': 'NODES_AND_EDGES',
  'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
  'elk.layered.nodePlacement.favorStraightEdges': 'true',
};

/** Gives every part of a plumbing its place and every line its corners. The same graph gives the same layout. */
export async function layPlumbing(graph: PlumbingGraph, kernel: LayoutKernel): Promise<PlumbingLayout> {
  const laid = await kernel.layout(asked(graph));
  return {
    width: laid.width ?? 0,
    height: laid.height ?? 0,
    nodes: Object.fromEntries(
      (laid.children ?? []).map(({ id, x = 0, y = 0, width = 0, height = 0 }) => [
        id,
        { x, y, width, height },
      ]),
    ),
    edges: Object.fromEntries((laid.edges ?? []).map((e) => [e.id, corners(e)])),
  };
}

function asked({ run, nodes, edges }: PlumbingGraph): ElkNode {
  return {
    id: 'plumbing',
    layoutOptions: { ...OPTIONS, 'elk.direction': run === 'right' ? 'RIGHT' : 'DOWN' },
    children: nodes.map(({ id, sort, width, height, ports }) => ({
      id,
      width,
      height,
      layoutOptions: {
        ...(sort === 'part'
          ? { 'elk.portConstraints': 'FIXED_POS' }
          : { 'elk.portConstraints': sort === 'tank' ? 'FIXED_ORDER' : 'FIXED_SIDE' }),
        ...(sort === 'tank' ? { 'elk.layered.layering.layerConstraint': 'FIRST' } : {}),
        ...(sort === 'branch'
          ? {
              'elk.nodeSize.constraints': 'PORTS MINIMUM_SIZE',
              'elk.nodeSize.minimum': `(${width},${height})`,
            }
          : {}),
      },
      ports: ports.map((port, i) => ({
        id: `${id}:${port.id}`,
        ...(port.at === undefined ? {} : { x: port.at[0], y: port.at[1] }),
        // What is joined first, the suction, stands lowest at the tank; the kernel counts clockwise.
        layoutOptions: { 'elk.port.side': SIDES[port.side], 'elk.port.index': String(ports.length - i) },
      })),
    })),
    edges: edges.map(({ id, from, to }) => ({ id, sources: [from.join(':')], targets: [to.join(':')] })),
  };
}

function corners({ sections = [] }: ElkExtendedEdge): [number, number][] {
  return sections.flatMap(({ startPoint, bendPoints = [], endPoint }) =>
    [startPoint, ...bendPoints, endPoint].map(({ x, y }): [number, number] => [x, y]),
  );
}
