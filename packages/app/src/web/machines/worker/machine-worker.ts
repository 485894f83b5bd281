/// <reference lib="webworker" />
import { asBuilt, proveRig, type PutInstead } from '@spraywright/engine/rig';
import { costsAsPrices } from '../../frame/costs-as-prices.ts';
import { loadInputs, type Inputs } from '../../worker/inputs.ts';
import { buildSheet, plumbingDrawn } from './build-sheet.ts';
import { faultSheet } from './fault-sheet.ts';
import { liquidSheet } from './liquid-sheet.ts';
import type { ProvenMachine } from './proven-machine.ts';
import { triedParts } from './tried-instead.ts';
import { yardTold } from './yard-told.ts';
import type { AskedMachine, FromMachine, Questions, ToMachine, Topic } from './protocol.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
let loading: Promise<Inputs> | undefined;
let known: { readonly key: string; readonly machine: ProvenMachine } | undefined;

const ANSWERS: { readonly [T in Topic]: (m: ProvenMachine, asks: Questions[T]['asks']) => unknown } = {
  build: buildSheet,
  plumbing: plumbingDrawn,
  instead: triedParts,
  fault: faultSheet,
  liquids: liquidSheet,
  yard: yardTold,
};

scope.onmessage = ({ data }: MessageEvent<ToMachine>) => {
  loading ??= loadInputs(data.address);
  void loading.then(
    (inputs) => scope.postMessage(answerTo(inputs, data)),
    (error: unknown) => {
      loading = undefined;
      scope.postMessage({ id: data.id, why: reason(error) } satisfies FromMachine);
    },
  );
};

function answerTo(inputs: Inputs, { id, topic, machine, asks }: ToMachine): FromMachine {
  try {
    const answer = ANSWERS[topic] as (m: ProvenMachine, asks: unknown) => unknown;
    return { id, tells: answer(provenOf(inputs, machine), asks) };
  } catch (error) {
    return { id, why: reason(error) };
  }
}

const reason = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function provenOf(inputs: Inputs, asked: AskedMachine): ProvenMachine {
  const key = JSON.stringify([asked.serial, asked.units, asked.instead.length]);
  if (known?.key === key) return known.machine;
  const instead = costsAsPrices(asked.instead) as readonly PutInstead[];
  const built = asBuilt(costsAsPrices(asked.document), instead, inputs.catalogue);
  if (!built.ok) throw new Error(`this machine cannot be read: ${built.problems[0]!.message}`);
  const { raw, rig, catalogue } = built;
  const proof = proveRig(rig, catalogue, inputs.shop, { units: asked.units });
  known = { key, machine: { raw, rig, catalogue, proof, inputs, asked } };
  return known.machine;
}
