import type { Rig } from '@spraywright/engine/rig';
import {
  diagnoseWith,
  faultModel,
  faultOf,
  firstRound,
  type Check,
  INSTRUMENTS,
  shownWith,
  yesWith,
  type Diagnosis,
  type FaultCase,
  type Instrument,
  type LookId,
} from '@spraywright/engine/yard';
import { randomOf } from './mutation.ts';

export interface SyntheticCall {
  readonly truth: FaultCase;
  /** After the first readings, and after each further check that was proposed and done. */
  readonly steps: readonly Diagnosis[];
}

/** A call comes when some needed reading is off by at least this much, as a share. */
const NOTICED = 0.06;

/**
 * Calls about rigs in service with one fault each: drawn by the rates of the faults among those that somebody would notice, in any
 * size, on a copy off by its tolerances, solved exactly and read with the instruments' scatter. The caller answers what the first
 * round asks, then does the check that is proposed, up to so many times.
 */
export function syntheticCalls(
  rigs: readonly Rig[],
  { count, seed, checks }: { count: number; seed: number; checks: number },
): SyntheticCall[] {
  const random = randomOf(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const models = rigs.map((rig) => faultModel(rig));
  const calls: SyntheticCall[] = [];
  for (let tried = 0; calls.length < count && tried < 50 * count; tried++) {
    const faults = models[tried % models.length]!;
    const { model } = faults;
    const cases = faults.faults.flatMap((f) => (f.of === undefined ? [] : [f.of]));
    let at = random() * cases.reduce((sum, c) => sum + c.rate, 0);
    const truth = cases.find((c) => (at -= c.rate) < 0)!;
    const { slight, bad } = faultOf(truth.fault);
    const effect = truth.effect(slight * (bad / slight) ** random());
    const x = model.inputs.map((i) => i.mean + i.deviation * normal());
    const sound = shownWith(model, {}, x);
    const shown = shownWith(model, effect, x);
    const read = shown.map((v, r) => {
      const { deviation }: Instrument = INSTRUMENTS[model.rows[r]!.instrument];
      return v + deviation * normal();
    });
    const noticed = model.rows.some((row, r) => row.needed && !(Math.abs(shown[r]! - sound[r]!) < NOTICED));
    if (!noticed) continue;
    const values = new Map<string, number[]>();
    const looks: { id: LookId; answer: 'yes' | 'no' }[] = [];
    const answer = (check: Check) => {
      if ('look' in check) {
        const answer = random() < yesWith(check.look, truth.fault) ? 'yes' : 'no';
        return void looks.push({ id: check.look, answer });
      }
      const r = model.rows.findIndex((row) => row.id === check.reading);
      const { plain }: Instrument = INSTRUMENTS[model.rows[r]!.instrument];
      if (Number.isFinite(read[r]!))
        values.set(model.rows[r]!.id, [plain === true ? read[r]! : Math.exp(read[r]!)]);
    };
    firstRound(faults).forEach(answer);
    const told = () =>
      diagnoseWith(faults, {
        values,
        document: {
          format: 'spraywright-readings',
          rig: model.rig.document.id,
          wind: 1,
          readings: [],
          looks,
        },
      });
    const steps = [told()];
    const asked = new Set<string>();
    for (let k = 0; k < checks; k++) {
      const next = steps.at(-1)!.next.find((c) => !('reading' in c && asked.has(c.reading)));
      if (next === undefined || steps.at(-1)!.suspects[0]!.probability > 0.95) break;
      if ('reading' in next) asked.add(next.reading);
      answer(next);
      steps.push(told());
    }
    calls.push({ truth, steps });
  }
  return calls;
}

const STEPS = { 'at first': 0, 'after one check': 1, 'at last': Infinity } as const;

/** Share of the calls whose true cause is among the first so many, after the first readings, one check more, or at the end. */
export function hits(calls: readonly SyntheticCall[], among: number, when: keyof typeof STEPS): number {
  const hit = calls.filter(({ truth, steps }) =>
    steps[Math.min(STEPS[when], steps.length - 1)]!.suspects.slice(0, among).some((s) => s.id === truth.id),
  );
  return hit.length / calls.length;
}

/** How often one cause was taken for another after the first readings, the most often first. */
export function confusions(
  calls: readonly SyntheticCall[],
): { truth: string; said: string; times: number }[] {
  const found = new Map<string, { truth: string; said: string; times: number }>();
  for (const { truth, steps } of calls) {
    const first = steps[0]!.suspects[0]!;
    if (first.id === truth.id) continue;
    const said = first.fault === truth.fault ? `${first.fault} of another part` : (first.fault ?? first.id);
    const key = `${truth.fault} ${said}`;
    const row = found.get(key) ?? { truth: truth.fault, said, times: 0 };
    row.times++;
    found.set(key, row);
  }
  return [...found.values()].sort((a, b) => b.times - a.times);
}
