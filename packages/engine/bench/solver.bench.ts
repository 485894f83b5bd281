/**
 * The solver beside EPANET 2.3.5 on the six reference networks, in one process:
 *   node --conditions=source --import tsx packages/engine/bench/solver.bench.ts [rounds]
 * cold: one tip is changed, then the network is solved from nothing, exact Colebrook law, to 1e-9 of the largest flow.
 * warm: the same, from the last solution. batch: many rows of changes solved in one call, time for each row.
 * EPANET gets the same changes. From nothing it is initH and runH; its own warm start is runH alone after a change (initH
 * without new flows starts anew all the same), which takes it 3 to 5 iterations instead of 11 to 23.
 * compile: a model made ready for its first solve. bytes: heap that a solve leaves behind, garbage included; what the
 * compiler boxes for a call is a few dozen, one number for each branch and step would be 500 and more.
 * Rounds of all contenders alternate, so that other load on the machine falls on all of them alike. EPANET stops at
 * the accuracy its files ask for, a total change of flows of 1e-5 of their sum, and would be no faster with the 1e-9 of ours.
 */
import { readFileSync } from 'node:fs';
import { AnalysisStatistic, CountType, InitHydOption, LinkProperty, NodeProperty } from 'epanet-js';
import { bytesPerCall } from '../test/bytes-per-call.ts';
import { openEpanet235 } from '../test/epanet.ts';
import { readInp } from '../test/inp-network.ts';
import {
  compileNetwork,
  type CompiledNetwork,
  type NetworkModel,
  type Variable,
} from '../src/hydraulics/index.ts';

const NETWORKS = ['net01', 'net02', 'net03', 'net04', 'net05', 'net06'];
const ROUNDS = Number(process.argv[2] ?? 60);
const ROWS = 2000;
/** Time each contender runs before it is measured [ms]. */
const WARM_UP = 300;
const folder = new URL('../reference/hydraulics/networks/', import.meta.url);

interface Contender {
  /** Does the i-th job. */
  readonly run: (i: number) => void;
  /** Solves a call of `run` makes. */
  readonly solves: number;
  readonly callsPerRound: number;
  readonly rounds: number[];
}

/** Tip sizes from 92 to 108 %, never the same twice in a row. */
const tipFactor = (i: number): number => 1 + 0.02 * ((i % 9) - 4);

function contender(run: (i: number) => void, callsPerRound: number, solves = 1): Contender {
  return { run, solves, callsPerRound, rounds: [] };
}

function measure(contenders: readonly Contender[]): void {
  for (const c of contenders) {
    const until = performance.now() + WARM_UP;
    for (let i = 0; performance.now() < until; i++) c.run(i);
  }
  for (let round = 0; round < ROUNDS; round++) {
    for (const c of contenders) {
      const began = performance.now();
      for (let i = 0; i < c.callsPerRound; i++) c.run(round * c.callsPerRound + i);
      c.rounds.push(((performance.now() - began) * 1000) / (c.callsPerRound * c.solves));
    }
  }
  for (const c of contenders) c.rounds.sort((a, b) => a - b);
}

const fastest = (c: Contender): number => c.rounds[0]!;
const middle = (c: Contender): number => c.rounds[c.rounds.length >> 1]!;

function compiled(model: NetworkModel): CompiledNetwork {
  const result = compileNetwork(model);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.network;
}

/** Rows of [tip size, longest hose's length], spread over 30 % each side of what the network has. */
function batchRows(tip: number, length: number): Float64Array {
  const values = new Float64Array(2 * ROWS);
  let seed = 1;
  const share = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return 0.7 + (0.6 * seed) / 2 ** 32;
  };
  for (let i = 0; i < ROWS; i++) {
    values[2 * i] = tip * share();
    values[2 * i + 1] = length * share();
  }
  return values;
}

/** Largest difference of the batch from exact solves of each row on a network of its own, over the row's largest flow. */
function batchError(
  model: NetworkModel,
  variables: readonly Variable[],
  values: Float64Array,
  outputs: readonly number[],
  flows: Float64Array,
): number {
  const network = compiled(model);
  let worst = 0;
  for (let row = 0; row < ROWS; row++) {
    variables.forEach((v, k) => {
      if (v.parameter !== 'surface') network.set(v.element, v.parameter, values[row * variables.length + k]!);
    });
    if (network.solve({ start: 'cold' }).status !== 'converged')
      throw new Error(`row ${row} did not converge`);
    let largest = 0;
    for (let e = 0; e < network.elementCount; e++) largest = Math.max(largest, Math.abs(network.flow(e)));
    outputs.forEach((e, k) => {
      const off = Math.abs(flows[row * outputs.length + k]! - network.flow(e));
      worst = Math.max(worst, off / largest);
    });
  }
  return worst;
}

interface Row {
  readonly name: string;
  readonly elements: number;
  readonly epanetCold: Contender;
  readonly epanetWarm: Contender;
  readonly epanetRows: Contender;
  readonly cold: Contender;
  readonly warm: Contender;
  readonly batch: Contender;
  readonly iterations: { epanetCold: number; epanetWarm: number; cold: number; warm: number };
  readonly batchError: number;
  readonly compile: Contender;
  /** [bytes] */
  readonly left: { readonly cold: number; readonly warm: number };
}

/** A loop that allocates would leave more than this behind [bytes]: measuring ends once a round is below it. */
const FEW_BYTES = 32;

async function compare(name: string): Promise<Row> {
  const text = readFileSync(new URL(`${name}.inp`, folder), 'utf8');
  const { model } = readInp(text, 'colebrook');
  const tipId = model.elements.find((e) => e.id.startsWith('tip:'))!.id;
  const junction = tipId.slice(4);
  const hose = model.elements.reduce((longest, e) => (lengthOf(e) > lengthOf(longest) ? e : longest));

  const project = await openEpanet235(text);
  const node = project.getNodeIndex(junction);
  const link = project.getLinkIndex(hose.id);
  const emitter = project.getNodeValue(node, NodeProperty.Emitter);
  const iterations = { epanetCold: 0, epanetWarm: 0, cold: 0, warm: 0 };
  const steps = (): number => project.getStatistic(AnalysisStatistic.Iterations);
  const epanetCold = contender((i) => {
    project.setNodeValue(node, NodeProperty.Emitter, emitter * tipFactor(i));
    project.initH(InitHydOption.InitFlow);
    project.runH();
    iterations.epanetCold = steps();
  }, 4);
  const epanetWarm = contender((i) => {
    project.setNodeValue(node, NodeProperty.Emitter, emitter * tipFactor(i));
    project.runH();
    iterations.epanetWarm = steps();
  }, 12);

  const network = compiled(model);
  const tip = network.elementIndex(tipId);
  const size = network.get(tip, 'k');
  const cold = contender((i) => {
    network.set(tip, 'k', size * tipFactor(i));
    iterations.cold = network.solve({ start: 'cold' }).iterations;
  }, 64);
  const warmNetwork = compiled(model);
  const warm = contender((i) => {
    warmNetwork.set(tip, 'k', size * tipFactor(i));
    iterations.warm = warmNetwork.solve().iterations;
  }, 64);

  const rows = compiled(model);
  const hoseIndex = rows.elementIndex(hose.id);
  const variables: Variable[] = [
    { element: tip, parameter: 'k' },
    { element: hoseIndex, parameter: 'length' },
  ];
  const outputs = model.elements.flatMap((e, i) => (e.id.startsWith('tip:') ? [i] : []));
  const values = batchRows(size, rows.get(hoseIndex, 'length'));
  const flows = new Float64Array(ROWS * outputs.length);
  const failed = new Uint8Array(ROWS);
  const batch = contender(
    () => {
      if (rows.solveMany(variables, values, outputs, flows, failed) > 0)
        throw new Error(`${name}: rows of the batch did not converge`);
    },
    1,
    ROWS,
  );
  // A project of its own, so that the other two go on from their own last solution.
  const rowProject = await openEpanet235(text);
  rowProject.initH(InitHydOption.InitFlow);
  const epanetRows = contender((i) => {
    const row = i % ROWS;
    rowProject.setNodeValue(node, NodeProperty.Emitter, (emitter * values[2 * row]!) / size);
    rowProject.setLinkValue(link, LinkProperty.Length, values[2 * row + 1]!);
    rowProject.runH();
  }, 12);

  const compile = contender(() => void compiled(model), 2);
  measure([epanetCold, epanetWarm, epanetRows, cold, warm, batch, compile]);
  const left = { cold: bytesPerCall(FEW_BYTES, cold.run), warm: bytesPerCall(FEW_BYTES, warm.run) };
  const elements = project.getCount(CountType.LinkCount) + outputs.length;
  project.close();
  rowProject.close();
  return {
    name,
    elements,
    epanetCold,
    epanetWarm,
    epanetRows,
    cold,
    warm,
    batch,
    iterations,
    batchError: batchError(model, variables, values, outputs, flows),
    compile,
    left,
  };
}

const lengthOf = (e: NetworkModel['elements'][number]): number => (e.law.kind === 'pipe' ? e.law.length : 0);

const both = (c: Contender): string => `${fastest(c).toFixed(2)}/${middle(c).toFixed(2)}`;
const geometric = (values: readonly number[]): number =>
  Math.exp(values.reduce((sum, v) => sum + Math.log(v), 0) / values.length);

/**
 * What is asked of each contender. The denominator is EPANET's fastest way to change one value and solve again, whichever of
 * its contenders that is on a network; `least` holds on every network, `mean` for the geometric mean of all.
 */
const AIMS = [
  { ours: 'cold', mean: 8, least: 4 },
  { ours: 'warm', mean: 10 },
  { ours: 'batch', mean: 30, least: 30 },
] as const;
/** A rig made ready [us]. */
const COMPILE_AIM = 100;

const epanetFastest = (r: Row, of: (c: Contender) => number): number =>
  Math.min(of(r.epanetCold), of(r.epanetWarm), of(r.epanetRows));

function report(rows: readonly Row[]): void {
  const head = [
    'network',
    'elements',
    'EPANET cold',
    'EPANET warm',
    'EPANET rows',
    'cold',
    'warm',
    'batch',
    'iterations Ec/Ew/c/w',
    'batch error',
    'compile',
    'bytes c/w',
  ];
  const lines = rows.map((r) => [
    r.name,
    String(r.elements),
    ...[r.epanetCold, r.epanetWarm, r.epanetRows, r.cold, r.warm, r.batch].map(both),
    `${r.iterations.epanetCold}/${r.iterations.epanetWarm}/${r.iterations.cold}/${r.iterations.warm}`,
    r.batchError.toExponential(1),
    both(r.compile),
    `${r.left.cold.toFixed(0)}/${r.left.warm.toFixed(0)}`,
  ]);
  printTable(`us per solve, fastest/middle of ${ROUNDS} rounds`, head, lines);
  const ratios = AIMS.map((aim) => {
    const by = (of: (c: Contender) => number): number[] =>
      rows.map((r) => epanetFastest(r, of) / of(r[aim.ours]));
    const middles = by(middle);
    const mean = geometric(middles);
    const least = Math.min(...middles);
    const kept = mean >= aim.mean && (!('least' in aim) || least >= aim.least);
    return [
      `${aim.ours} against EPANET's fastest`,
      ...middles.map((x) => x.toFixed(1)),
      `${mean.toFixed(1)} (aim ${aim.mean})`,
      `${least.toFixed(1)} (aim ${'least' in aim ? aim.least : 'none'})`,
      geometric(by(fastest)).toFixed(1),
      kept ? 'reached' : 'NOT reached',
    ];
  });
  printTable(
    "times faster than EPANET's fastest way to change one value and solve again, by the middles",
    ['', ...rows.map((r) => r.name), 'geometric mean', 'least', 'mean of the fastest', 'aim'],
    ratios,
  );
  const slowest = Math.max(...rows.map((r) => middle(r.compile)));
  const bytes = Math.max(...rows.flatMap((r) => [r.left.cold, r.left.warm]));
  console.log(
    `compile at most ${slowest.toFixed(0)} us (aim ${COMPILE_AIM}); a solve leaves ${bytes.toFixed(0)} bytes at most`,
  );
}

function printTable(title: string, head: readonly string[], lines: readonly (readonly string[])[]): void {
  const widths = head.map((h, i) => Math.max(h.length, ...lines.map((l) => l[i]!.length)));
  console.log(`\n${title}`);
  for (const line of [head, ...lines])
    console.log(
      line.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  '),
    );
}

const rows: Row[] = [];
for (const name of NETWORKS) rows.push(await compare(name));
report(rows);
const wrong = rows.filter((r) => !(r.batchError <= 1e-6));
if (wrong.length > 0) {
  console.log(`the batch misses exact solves by more than 1e-6 on ${wrong.map((r) => r.name).join(', ')}`);
  process.exitCode = 1;
}
