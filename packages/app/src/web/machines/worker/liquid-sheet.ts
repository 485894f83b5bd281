import { citation, LIQUIDS, liquidOf, isLiquid, isMaterial, materialOf } from '@spraywright/engine/liquids';
import { betweenLiquids } from '@spraywright/engine/rig';
import type { ProvenMachine } from './proven-machine.ts';
import type { LiquidSheet, Questions } from './protocol.ts';

/** What the last liquid asks before the next one, by the pairs that must not meet and the metals of this machine. */
export function liquidSheet(
  { rig }: ProvenMachine,
  { last, next }: Questions['liquids']['asks'],
): LiquidSheet {
  const liquids = LIQUIDS.map(({ id, name }) => ({ id, name }));
  if (last === undefined || !isLiquid(last)) return { liquids };
  const { after, steps, dangers } = betweenLiquids(rig, last, next);
  return {
    liquids,
    between: {
      after,
      steps,
      dangers: dangers.map(({ a, b, severity, result, rule }) => ({
        a: nameOf(a),
        b: nameOf(b),
        severity,
        result,
        sources: rule.sources.map(citation).join('; '),
      })),
    },
  };
}

function nameOf(id: string): string {
  return isLiquid(id) ? liquidOf(id).name : isMaterial(id) ? materialOf(id).name : id;
}
