import { display, moneyText } from '@spraywright/engine/quantity';
import {
  figureText,
  stepText,
  oddsOf,
  type Confidence,
  type Proof,
  type PromiseState,
  type RigPromise,
} from '@spraywright/engine/rig';
import { sharperLines } from '@spraywright/engine/yard';
import { promiseFigures, sentencesOf } from './promise-words.ts';

export interface ProofTextOptions {
  readonly units: 'us' | 'metric';
  /** Show the working under each promise. */
  readonly working?: boolean;
  /** How sure each promise is; shown where it is given. */
  readonly confidence?: Confidence | undefined;
  /** Whether the odds were drawn with what readings of built rigs have taught. */
  readonly learned?: boolean;
}

const WORDS: Readonly<Record<PromiseState, string>> = {
  broken: 'Broken',
  thin: 'Thin',
  unknown: 'Unknown',
  kept: 'Kept',
};

/** The proof of a rig in plain words, for the terminal. */
export function proofText(proof: Proof, options: ProofTextOptions): string {
  const { units, confidence } = options;
  const sentenceOf = sentencesOf(proof);
  return [
    `${proof.title}, for ${proof.customer}`,
    `${moneyText(proof.bill.priceCents)}, dry mass ${display(proof.bill.dryMass, 'mass', units)}, ready in ${proof.bill.readyInDays} working days`,
    '',
    ...proof.duties.flatMap((d) => dutyLines(d, units)),
    '',
    ...proof.promises.flatMap((p) => promiseLines(p, sentenceOf(p), options)),
    '',
    'Cautions',
    ...proof.cautions.flatMap(cautionLines),
    '',
    'Parts',
    ...proof.parts.map(
      (p) =>
        `  ${p.count > 1 ? `${p.count} x ` : ''}${p.name}${p.length === undefined ? '' : `, ${display(p.length, 'length', units)}`}${p.figuresFrom === undefined ? '' : ` (in no catalogue; figures: ${p.figuresFrom})`}`,
    ),
    `  and ${proof.bill.lines.filter((l) => l.sort === 'fitting').reduce((n, l) => n + l.quantity, 0)} fittings, ${hours(proof)} h of labour`,
    '',
    ...(confidence === undefined
      ? []
      : [
          `Odds from ${confidence.draws} draws of ${confidence.inputs.length} tolerances (seed ${confidence.seed}). Most tolerances are judgement: a water test of the built rig says more.`,
          ...(options.learned === true ? sharperLines(confidence) : []),
        ]),
    `Computed with engine ${proof.engineVersion}, catalogue ${proof.catalogue.name} ${proof.catalogue.version}. The product label, local codes and licensed practice come first.`,
    '',
  ].join('\n');
}

function dutyLines(duty: Proof['duties'][number], units: 'us' | 'metric'): string[] {
  const { open } = duty;
  if (open.status === 'failed') return [`${duty.name}: no steady state. ${open.reason ?? ''}`];
  const outlets = open.outlets.map(
    (o) =>
      `${display(o.flow, 'flow', units)} at ${display(o.tipPressure, 'pressure', units)} through the ${o.line}`,
  );
  const pump = open.pump;
  const pumpText =
    pump === undefined || pump.outlet === null
      ? ''
      : `; pump ${display(pump.flow, 'flow', units)} at ${display(pump.outlet, 'pressure', units)}`;
  return [`${duty.name}: ${outlets.join(', ')}${pumpText}`];
}

function promiseLines(
  p: RigPromise,
  sentence: string,
  { units, working = false, confidence }: ProofTextOptions,
): string[] {
  const { has, asked } = promiseFigures(p, units);
  const figures = [has && `has ${has}`, asked && `asked ${asked}`].filter(Boolean).join(', ');
  const lines = [`${WORDS[p.state].padEnd(8)} ${sentence}${figures === '' ? '' : `: ${figures}`}`];
  if (p.state !== 'kept' || working) lines.push(`         ${p.cause}`);
  if (confidence !== undefined) lines.push(...oddsLines(confidence, p, units));
  if (working) {
    for (const step of p.working)
      lines.push(
        `           ${stepText(step, units)}${step.figure === undefined ? '' : `: ${figureText(step.figure, units)}`}`,
      );
    lines.push(`           method: ${p.method}; source: ${p.source}`);
  }
  return lines;
}

function oddsLines(confidence: Confidence, promise: RigPromise, units: 'us' | 'metric'): string[] {
  const odds = oddsOf(confidence, promise, units);
  if ('none' in odds) return [`         ${odds.none}`];
  return [
    `         ${odds.kept}; ${odds.band}`,
    ...odds.matters.map(
      (m, i) => `         ${i === 0 ? 'decided most by' : '            and by'} ${m.name} (${m.check})`,
    ),
  ];
}

/** What can happen and what to do; a caution whose cause nobody stated stands as a question. */
function cautionLines({ caution, state, because }: Proof['cautions'][number]): string[] {
  const open = state === 'unknown' ? ` (not ruled out, ${because})` : '';
  return [`  ${caution.danger}${open}`, `    ${caution.act} [${caution.origin.source}]`];
}

function hours(proof: Proof): string {
  const h = proof.bill.lines.filter((l) => l.sort === 'labour').reduce((sum, l) => sum + l.quantity, 0);
  return String(Math.round(h * 10) / 10);
}
