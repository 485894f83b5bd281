/**
 * EPANET, run live, as the reference of the solver. 2.3.5 by epanet-js; 2.2 by its bare WebAssembly calls, since an active
 * PSV of 2.3.x creates water downstream (EPANET pull request 694, issue 892).
 */
import loadEpanet22, { type EpanetModule } from '@model-create/epanet-engine';
import { CountType, InitHydOption, LinkProperty, NodeProperty, Project, Workspace } from 'epanet-js';

export interface EpanetResult {
  /** Total heads in the file's length unit. */
  readonly heads: ReadonlyMap<string, number>;
  /** Flows of the links in the file's flow unit. */
  readonly flows: ReadonlyMap<string, number>;
  /** What leaves at a node: the flow of its emitter, in the file's flow unit. */
  readonly outflows: ReadonlyMap<string, number>;
}

/** An opened project, ready for `initH` and `runH`. */
export async function openEpanet235(text: string): Promise<Project> {
  const workspace = new Workspace();
  await workspace.loadModule();
  if (workspace.version !== 20305) throw new Error(`EPANET is ${workspace.version}, 2.3.5 was expected`);
  workspace.writeFile('network.inp', text);
  const project = new Project(workspace);
  project.open('network.inp', 'report.rpt', 'out.bin');
  project.openH();
  return project;
}

export async function solveEpanet235(text: string): Promise<EpanetResult> {
  const project = await openEpanet235(text);
  project.initH(InitHydOption.NoSave);
  project.runH();
  const heads = new Map<string, number>();
  const flows = new Map<string, number>();
  const outflows = new Map<string, number>();
  for (let i = 1; i <= project.getCount(CountType.NodeCount); i++) {
    const id = project.getNodeId(i);
    heads.set(id, project.getNodeValue(i, NodeProperty.Head));
    outflows.set(id, project.getNodeValue(i, NodeProperty.Demand));
  }
  for (let i = 1; i <= project.getCount(CountType.LinkCount); i++)
    flows.set(project.getLinkId(i), project.getLinkValue(i, LinkProperty.Flow));
  project.close();
  return { heads, flows, outflows };
}

const MAX_ID = 64;

export async function solveEpanet22(text: string): Promise<EpanetResult> {
  const m: EpanetModule = await loadEpanet22();
  const slot = m._malloc(16);
  const name = m._malloc(MAX_ID);
  const check = (code: number): void => {
    if (code > 10) throw new Error(`EPANET 2.2 gave error ${code}`);
  };
  check(m._EN_getversion(slot));
  const version = m.getValue(slot, 'i32');
  if (version !== 20200) throw new Error(`EPANET is ${version}, 2.2 was expected`);
  m.FS.writeFile('network.inp', text);
  check(m._EN_createproject(slot));
  const project = m.getValue(slot, 'i32');
  check(
    m._EN_open(
      project,
      m.stringToNewUTF8('network.inp'),
      m.stringToNewUTF8('report.rpt'),
      m.stringToNewUTF8('out.bin'),
    ),
  );
  check(m._EN_openH(project));
  check(m._EN_initH(project, InitHydOption.NoSave));
  check(m._EN_runH(project, slot));
  const count = (type: CountType): number => {
    check(m._EN_getcount(project, type, slot));
    return m.getValue(slot, 'i32');
  };
  const nodeValue = (i: number, property: NodeProperty): number => {
    check(m._EN_getnodevalue(project, i, property, slot));
    return m.getValue(slot, 'double');
  };
  const heads = new Map<string, number>();
  const flows = new Map<string, number>();
  const outflows = new Map<string, number>();
  for (let i = 1; i <= count(CountType.NodeCount); i++) {
    check(m._EN_getnodeid(project, i, name));
    const id = m.UTF8ToString(name);
    heads.set(id, nodeValue(i, NodeProperty.Head));
    outflows.set(id, nodeValue(i, NodeProperty.Demand));
  }
  for (let i = 1; i <= count(CountType.LinkCount); i++) {
    check(m._EN_getlinkid(project, i, name));
    const id = m.UTF8ToString(name);
    check(m._EN_getlinkvalue(project, i, LinkProperty.Flow, slot));
    flows.set(id, m.getValue(slot, 'double'));
  }
  check(m._EN_close(project));
  check(m._EN_deleteproject(project));
  return { heads, flows, outflows };
}
