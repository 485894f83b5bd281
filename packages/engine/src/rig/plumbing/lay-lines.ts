import type { Part } from '../../catalogue/index.ts';
import type { RigLine } from '../rig-document.ts';
import { joinAtNode, type NodeEnd } from './branches.ts';
import { coupleOutside } from './outside.ts';
import type { Plan, Side } from './plan.ts';
import { agitatorInTank, joinOutgoing, joinReturn } from './tank-wall.ts';

/** Joins the items of every line in order, and the ends of the lines where they meet: at the tank, at nodes, in the air. */
export function layLines(plan: Plan): void {
  const nodes = new Map<string, NodeEnd[]>();
  const meet = (node: string, end: NodeEnd) => {
    const list = nodes.get(node) ?? [];
    list.push(end);
    nodes.set(node, list);
  };
  for (const line of plan.rig.lines) {
    let before: Side | undefined;
    line.run.forEach((id, i) => {
      const { part } = plan.rig.items.get(id)!;
      const enter =
        part.kind === 'agitator' && line.to === 'tank'
          ? agitatorInTank(plan, plan.side(id, 'in'), line.id)
          : plan.side(id, 'in');
      if (enter !== undefined) {
        if (i > 0 && before !== undefined) plan.join(before, enter, line.id);
        else if (i === 0 && line.from === 'tank') joinOutgoing(plan, enter, line.id);
        else if (i === 0) meet(line.from, { side: enter, line: line.id, feeds: false });
      }
      if (part.kind === 'hose') joinHosePieces(plan, id, line.id);
      before = leaving(plan, line, id, part, i === line.run.length - 1);
    });
    if (before === undefined) continue;
    if (line.to === 'tank') joinReturn(plan, before, line.id);
    else if (line.to === 'air') coupleOutside(plan, before, line.id, 'what the hose fills', 'male');
    else meet(line.to, { side: before, line: line.id, feeds: true });
  }
  for (const end of gauges(plan)) meet(end.node, end);
  for (const [node, ends] of nodes) joinAtNode(plan, node, unloaderInTheMain(plan, ends));
}

/** Where liquid leaves an item; undefined behind the last one that has no such port: a tip, a nozzle, an agitator. */
function leaving(plan: Plan, line: RigLine, id: string, part: Part, last: boolean): Side | undefined {
  const side = plan.side(id, part.kind === 'regulator' && line.to === 'tank' ? 'bypass' : 'out');
  return side.at === undefined && last ? undefined : side;
}

/** A hose longer than its longest piece is made of several, joined. */
function joinHosePieces(plan: Plan, id: string, line: string): void {
  const { part, item } = plan.rig.items.get(id)!;
  if (part.kind !== 'hose') return;
  const pieces = Math.ceil((item.length ?? 0) / part.longestPiece - 1e-6);
  if (pieces > 1)
    plan.join(plan.side(id, 'out', `${id} piece`), plan.side(id, 'in', 'next piece'), line, pieces - 1);
}

/** Gauges stand where the pump delivers. */
function gauges(plan: Plan): (NodeEnd & { node: string })[] {
  const { items, lines } = plan.rig;
  const pumpLine = lines.find((l) => l.run.some((id) => items.get(id)!.part.kind.endsWith('pump')));
  return [...items.values()].flatMap(({ item, part }) =>
    part.kind === 'gauge' && pumpLine !== undefined
      ? [{ node: pumpLine.to, side: plan.side(item.id, 'in'), line: pumpLine.id, feeds: false, still: true }]
      : [],
  );
}

/**
 * An unloader with three ports stands in the main: the pump's line enters it and all else hangs on its outlet. One with
 * two ports hangs on the main like any branch.
 */
function unloaderInTheMain(plan: Plan, ends: readonly NodeEnd[]): readonly NodeEnd[] {
  const unloader = ends.find(
    ({ side, feeds }) =>
      !feeds &&
      plan.rig.items.get(side.of)?.part.kind === 'regulator' &&
      plan.side(side.of, 'out').at !== undefined &&
      plan.side(side.of, 'bypass').at !== undefined,
  );
  const feed = ends.find((e) => e.feeds);
  if (unloader === undefined || feed === undefined) return ends;
  plan.join(feed.side, unloader.side, feed.line);
  const through: NodeEnd = { side: plan.side(unloader.side.of, 'out'), line: feed.line, feeds: true };
  return ends.flatMap((e) => (e === unloader ? [] : [e === feed ? through : e]));
}
