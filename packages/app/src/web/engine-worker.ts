/// <reference lib="webworker" />
import {
  proverBeside,
  startBriefs,
  type DutyProof,
  type Proof,
  type ProvenRig,
} from '@spraywright/engine/rig';
import { changeBetween, changed, type Problem } from '@spraywright/engine/quantity';
import type {
  CurvePicture,
  DeskBody,
  FieldProblem,
  FoundRigs,
  FromEngine,
  RigJson,
  ToEngine,
  View,
} from './protocol.ts';
import type { Choices } from './worker/choices.ts';
import { deskBody } from './worker/desk-body.ts';
import { readInputs, type Inputs } from './worker/inputs.ts';
import { picturesOf } from './worker/pictures.ts';
import type { TriedParts } from './worker/tried-parts.ts';
import { Turns } from './worker/turns.ts';

/** Longest stretch of background work before messages are looked at again [ms]. */
const SLICE = 4;
/** Quiet time after a change before parts are tried [ms]. */
const QUIET = 140;
/** Time between two tellings of a list that still grows [ms]. */
const TELL = 150;

interface Shown extends ProvenRig {
  readonly version: number;
  /** Made when parts are first tried in it. */
  tried: TriedParts | undefined;
  /** Made when rigs are first compared with it. */
  choices?: Choices;
}

const scope = self as unknown as DedicatedWorkerGlobalScope;
const say = (message: FromEngine) => scope.postMessage(message);

let begin: (inputs: Inputs) => void;
/** Settled as soon as the page has handed over what it starts from; without that, nothing is answered. */
const started = new Promise<Inputs>((resolve) => (begin = resolve));

/** Reads the inputs and tells how that ended. */
function start(document: ArrayBuffer): void {
  try {
    const inputs = readInputs(document);
    const { shop, briefs, designed } = inputs;
    say({
      type: 'ready',
      shop: { name: shop.name, address: shop.address },
      briefs,
      works: startBriefs(),
      ...(designed === undefined ? {} : { designed }),
    });
    begin(inputs);
  } catch (error) {
    say({ type: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
}

let raw: RigJson | undefined;
let shown: Shown | undefined;
let view: View | undefined;
/** The newest document when it cannot be read, with why. */
let refused: { raw: RigJson; problems: readonly FieldProblem[] } | undefined;
let bodyKey = '';
/** What stands on the page. */
let told: DeskBody | undefined;
/** What the search of the whole catalogue has found. */
let found: FoundRigs = { rigs: [], complete: false };
let layoutAsked = '';
let toldAt = 0;
/** What is tried and drawn when nothing more urgent is asked. */
const turns = new Turns();

scope.onmessage = ({ data }: MessageEvent<ToEngine>) => void answer(data);

async function answer(message: ToEngine): Promise<void> {
  if (message.type === 'start') return start(message.document);
  const inputs = await started;
  const { catalogue, shop } = inputs;
  if (message.type === 'design') {
    const { designRig, redesignRig } = await import('./worker/design.ts');
    const { brief, from, units } = message;
    const design =
      from === undefined
        ? designRig(brief, catalogue, shop, { units })
        : redesignRig({ ...from, brief }, catalogue, shop, { units });
    say(
      design.ok
        ? { type: 'designed', rig: design.rig }
        : { type: 'no-design', problems: design.problems.map(fieldProblem) },
    );
    return;
  }
  if (message.type === 'ask') {
    const { answerTo } = await import('./worker/answers.ts');
    say({ type: 'answer', ask: message.ask, answer: answerTo(message.question, message.rig, inputs) });
    return;
  }
  if (message.type === 'take') {
    const { partById, putPart } = await import('./worker/tried-parts.ts');
    const part = message.part === undefined ? undefined : partById(message.rig, catalogue, message.part);
    if (part === undefined && message.part !== undefined) return;
    const { change } = putPart(message.rig, catalogue, message.slot, part);
    const { items, lines } = changed(message.rig, change).document;
    say({ type: 'taken', taken: { items, lines }, about: message.about });
    return;
  }
  if (message.type === 'found') {
    found = message.found;
    if (view?.leaf !== 'choices') return;
    turns.next(() => void drawChoices());
    return;
  }
  const { seq, version } = message;
  if (message.rig !== undefined) raw = message.rig;
  else if (message.change !== undefined && raw !== undefined) raw = changed(raw, message.change).document;
  if (raw === undefined) return;
  turns.callOff();
  const before = view;
  view = message.view;
  const { units } = view;
  const prove = (document: RigJson): readonly FieldProblem[] => {
    const made = proverBeside(shown, catalogue, shop, units)(document);
    if (!made.ok) return made.problems.map(fieldProblem);
    shown = { ...made.proven, version, tried: undefined };
    return [];
  };
  let problems: readonly FieldProblem[] = refused?.raw === raw ? refused.problems : [];
  if (problems.length === 0 && (shown?.raw !== raw || before?.units !== units)) problems = prove(raw);
  if (problems.length > 0) {
    refused = { raw, problems };
    // The last good figures stay; those of another job or of none give way to what was kept beside the refused text.
    if (shown?.raw.id !== raw.id) shown = undefined;
    if (shown === undefined ? message.good !== undefined : before?.units !== units)
      prove(shown?.raw ?? message.good!);
  }
  if (shown === undefined) {
    say({ type: 'shown', seq, version, problems });
    say({ type: 'drawn', seq });
    return;
  }
  const duty = dutyOf(shown.proof, view.duty);
  const key = JSON.stringify([
    shown.version,
    view.units,
    view.sheet,
    duty.id,
    view.working,
    view.scaleWidth,
    view.scaleHeight,
  ]);
  const onPage = told;
  if (key !== bodyKey) told = deskBody(shown.raw, shown.rig, shown.proof, duty, view, inputs);
  bodyKey = key;
  say({
    type: 'shown',
    seq,
    version,
    problems,
    ...(told === onPage ? {} : { change: changeBetween(onPage, told, '') }),
  });
  const pictures = picturesOf(shown.rig, shown.proof, duty, view);
  say({ type: 'drawn', seq, pictures, spared: view.spared });
  if (view.leaf === 'plumbing') turns.next(() => void drawPlumbing());
  else if (view.leaf === 'choices')
    turns.next(() => void drawChoices(), view.leaf === before?.leaf ? QUIET : 0);
  else if (view.leaf === 'curves')
    turns.next(() => void drawCurves([]), view.leaf === before?.leaf ? QUIET : 0);
  else if (problems.length === 0)
    turns.next(() => void tryParts(), view.slot !== undefined && view.slot !== before?.slot ? 0 : QUIET);
}

/** Draws the plumbing, or asks the page for a layout when the one it has is of another. */
async function drawPlumbing(): Promise<void> {
  const began = turns.newest;
  const { plumbingKey, plumbingOf, plumbingPicture } = await import('./worker/plumbing.ts');
  if (turns.newest !== began || shown === undefined || view === undefined) return;
  const { version, rig, proof } = shown;
  const key = plumbingKey(rig, view);
  if (view.plumbing?.key !== key) {
    if (key !== layoutAsked) say({ type: 'plumbing', key, graph: plumbingOf(rig, view) });
    layoutAsked = key;
    return;
  }
  const picture = plumbingPicture(rig, proof, dutyOf(proof, view.duty), view.plumbing.layout, view);
  say({ type: 'plumbing-drawn', version, picture });
  turns.next(() => void tryParts(), QUIET);
}

/** Proves the rigs that could be made instead and draws them as they come. */
async function drawChoices(): Promise<void> {
  const began = turns.newest;
  const [inputs, { Choices: Made, trialsOf }] = await Promise.all([started, import('./worker/choices.ts')]);
  if (turns.newest !== began || shown === undefined || view === undefined) return;
  if (view.curveWidth === 0) return;
  const { raw: document, rig, proof, version } = shown;
  shown.choices ??= new Made(
    trialsOf({ raw: document, rig, proof }, inputs.catalogue, inputs.shop, view.units),
  );
  const { choices } = shown;
  choices.take(found);
  choices.work(slice());
  if (choices.done || performance.now() - toldAt > TELL) {
    toldAt = performance.now();
    say({ type: 'choices', version, choices: choices.picture(view) });
  }
  turns.next(() => void (choices.done ? tryParts() : drawChoices()));
}

/** Draws the curves one by one, then goes on with the parts. What draws them is fetched when they are first asked for. */
async function drawCurves(drawn: readonly CurvePicture[]): Promise<void> {
  const began = turns.newest;
  const { CURVES, curveOptions } = await import('./worker/curves.ts');
  if (turns.newest !== began || shown === undefined || view === undefined || view.curveWidth === 0) return;
  const { version, rig, proof } = shown;
  const next = CURVES[drawn.length];
  if (next === undefined) {
    say({ type: 'curves', version, curves: drawn });
    turns.next(() => void tryParts());
    return;
  }
  const now = [...drawn, next(rig, proof, dutyOf(proof, view.duty), curveOptions(view))];
  turns.next(() => void drawCurves(now));
}

/** Tries parts of the catalogue in the open slot in short stretches, then looks for ways out of what is broken. */
async function tryParts(): Promise<void> {
  const tried = await trying();
  if (tried === undefined || shown === undefined || view === undefined) return;
  const { version, proof } = shown;
  const { slot, units } = view;
  if (slot === undefined) return lookForWays(tried);
  const duty = dutyOf(proof, view.duty).id;
  const done = tried.isDone(slot);
  if (!done) tried.work(slot, slice());
  if (done || performance.now() - toldAt > TELL) {
    toldAt = performance.now();
    say({ type: 'effects', version, effects: tried.effects(slot, duty, units) });
  }
  if (done) lookForWays(tried);
  else turns.next(() => void tryParts());
}

/** Looks for ways out of what is broken, in short stretches. */
function lookForWays(tried: TriedParts): void {
  if (shown === undefined || view === undefined) return;
  const ways = tried.workWays(slice(), view.units);
  if (ways === undefined) turns.next(() => lookForWays(tried));
  else say({ type: 'ways-out', version: shown.version, ways, done: true });
}

/** What the shown rig's parts are tried with, fetched when first wanted; undefined when something newer came meanwhile. */
async function trying(): Promise<TriedParts | undefined> {
  const began = turns.newest;
  const [inputs, { TriedParts: Tried, trialsOf }] = await Promise.all([
    started,
    import('./worker/tried-parts.ts'),
  ]);
  if (turns.newest !== began || shown === undefined || view === undefined) return undefined;
  shown.tried ??= new Tried(trialsOf(shown, inputs.catalogue, inputs.shop, view.units));
  return shown.tried;
}

/** True for the length of one stretch of work. */
function slice(): () => boolean {
  const until = performance.now() + SLICE;
  return () => performance.now() < until;
}

function dutyOf(proof: Proof, id: string | undefined): DutyProof {
  return proof.duties.find((d) => d.id === id) ?? proof.duties[0]!;
}

function fieldProblem(p: Problem): FieldProblem {
  return { path: p.path.join('.'), message: p.message };
}
