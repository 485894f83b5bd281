import * as drawings from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import {
  hoseReach,
  pumpCurve,
  tankCurve,
  type DutyProof,
  type PumpCurve,
  type Proof,
  type Rig,
} from '@spraywright/engine/rig';
import type { CurvePicture, View } from '../protocol.ts';

type Draw = (rig: Rig, proof: Proof, duty: DutyProof, options: drawings.CurveOptions) => CurvePicture;

/** The curves of a rig in one duty, one at a time, since each takes the engine longer than a frame. */
export const CURVES: readonly Draw[] = [pumpPicture, reachPicture, tankPicture, weightPicture];

export function curveOptions(view: View): drawings.CurveOptions {
  return { width: view.curveWidth, units: view.units, palette: drawings.PALETTES[view.sheet] };
}

function pumpPicture(rig: Rig, proof: Proof, duty: DutyProof, options: drawings.CurveOptions): CurvePicture {
  const told = { id: 'pump', name: 'Pump and rig' };
  const curves = pumpCurve(rig, proof.duties, duty);
  if (curves === undefined) return { ...told, note: 'The rig has no pump.' };
  const here = curves.duties.find((d) => d.duty === duty.id);
  return {
    ...told,
    svg: drawings.pumpPlot(proof, duty, curves, options),
    note:
      here === undefined
        ? `No steady state: ${duty.open.reason ?? 'no reason is known'}`
        : `The rig works where they cross: ${display(here.flow, 'flow', options.units)}, ${display(here.rise, 'pressure', options.units)}. Letters are the duties.${pastCurve(curves, here.flow)}`,
  };
}

/** A pump that works past the last point its maker measured is told, not hidden. */
function pastCurve({ pump }: PumpCurve, flow: number): string {
  return flow > Math.max(...pump.map((p) => p.flow)) * 1.001
    ? ' That is past the last measured point of the pump: the dashed line is a guess.'
    : '';
}

function reachPicture(rig: Rig, _: Proof, duty: DutyProof, options: drawings.CurveOptions): CurvePicture {
  const told = { id: 'hose', name: duty.reach === undefined ? 'Flow and hose' : 'Reach and hose' };
  const hose = hoseReach(rig, duty);
  if (hose === undefined) return { ...told, note: 'No hose is walked out in this duty.' };
  return {
    ...told,
    svg: drawings.reachPlot(duty, hose, options),
    note: 'A longer hose keeps the rest on the reel; one shorter than what is walked out is out whole.',
  };
}

const NO_DAY = 'No day can be told: the duty that fills it sprays nothing.';

function tankPicture(rig: Rig, { day }: Proof, _: DutyProof, options: drawings.CurveOptions): CurvePicture {
  const told = { id: 'tank', name: "Day's work and tank" };
  if (day === undefined) return { ...told, note: NO_DAY };
  return {
    ...told,
    svg: drawings.tankPlot(day, tankCurve(day), rig.brief.day ?? {}, options),
    note: 'The same day with another tank and nothing else changed, not even the weight of the empty tank.',
  };
}

function weightPicture(_: Rig, proof: Proof, __: DutyProof, options: drawings.CurveOptions): CurvePicture {
  const told = { id: 'day', name: 'Weight over the day' };
  const { day } = proof;
  if (day === undefined) return { ...told, note: NO_DAY };
  const names = day.assumed.map((text) => text.split(':')[0]);
  return {
    ...told,
    svg: drawings.dayPlot(proof, day, options),
    note: names.length === 0 ? '' : `Our start values stand in for: ${names.join(', ')}.`,
  };
}
