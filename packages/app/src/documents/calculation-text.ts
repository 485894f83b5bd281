import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Method } from '../calc/method.ts';
import type { Calculation } from '../calc/registry.ts';
import { gives, resultText, taken, takes } from '../calc/wording.ts';

/** The named calculations, each with its inputs, results and source; `headed` by the folder that each lies in. */
export function methodListText(methods: readonly Method[], headed: boolean): string {
  let folder = '';
  return methods
    .flatMap((m) => {
      const place = m.file.slice(0, m.file.lastIndexOf('/'));
      const head = !headed || place === folder ? [] : [`${folder === '' ? '' : '\n'}${place}`];
      folder = place;
      return [
        ...head,
        `  ${m.name}  ${m.purpose}`,
        ...m.params.map((p) => `      ${p.name} ${takes(p)}`),
        `      gives ${m.results.map(gives).join('; ')}`,
        `      source: ${m.source}`,
      ];
    })
    .join('\n');
}

/** One calculation as a person needs it to run it. */
export function methodText(method: Method): string {
  return [
    `${method.name}: ${method.purpose}`,
    `  ${method.formula}`,
    '',
    'Inputs',
    ...method.params.map((p) => `  ${p.name.padEnd(widest(method.params))}  ${p.meaning} ${takes(p)}`),
    '',
    'Gives',
    ...method.results.map((r) => `  ${gives(r)}`),
    ...(method.valid === undefined ? [] : ['', `Holds: ${method.valid}`]),
    `Source: ${method.source}`,
  ].join('\n');
}

/** A calculation carried out, step by step: what was typed, what the formula took, what came out. */
export function workingText(
  name: string,
  done: Extract<Calculation, { ok: true }>,
  units: UnitSystem,
): string {
  const { working } = done;
  const width = widest(working.inputs);
  return [
    `${name}: ${working.purpose}`,
    ...(working.inputs.length === 0 ? [] : ['', 'Given']),
    ...working.inputs.map((i) => `  ${i.name.padEnd(width)}  ${i.typed}${taken(i)}   ${i.meaning}`),
    '',
    'Formula',
    `  ${working.formula}`,
    '',
    'Result',
    ...done.results.map((r) => `  ${resultText(r, units)}`),
    '',
    ...(working.valid === undefined ? [] : [`Holds: ${working.valid}`]),
    `Source: ${working.source}`,
  ].join('\n');
}

const widest = (named: readonly { readonly name: string }[]) =>
  Math.max(0, ...named.map(({ name }) => name.length));
