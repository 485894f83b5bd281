import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Printed columns of battery cable sizes. Gauge numbers 0, -1 and -3 are 1/0, 2/0 and 4/0. */
export interface WireSize {
  readonly gauge: number;
  readonly label: string;
  readonly awgCmil: number;
  readonly saeCmil: number;
  /** Current a single 105 degC conductor carries outside and inside an engine space. */
  readonly ampacityOutside: number;
  readonly ampacityEngineSpace: number;
}

const size = (
  gauge: number,
  label: string,
  awg: number,
  sae: number,
  out: number,
  engine: number,
): WireSize => ({
  gauge,
  label,
  awgCmil: awg,
  saeCmil: sae,
  ampacityOutside: out,
  ampacityEngineSpace: engine,
});

/** Thinnest first. */
export const WIRE_SIZES: readonly WireSize[] = [
  size(18, '18', 1600, 1537, 20, 17),
  size(16, '16', 2600, 2336, 25, 21),
  size(14, '14', 4100, 3702, 35, 30),
  size(12, '12', 6500, 5833, 45, 38),
  size(10, '10', 10500, 9343, 60, 51),
  size(8, '8', 16800, 14810, 80, 68),
  size(6, '6', 26600, 24538, 120, 102),
  size(4, '4', 42000, 37360, 160, 136),
  size(2, '2', 66500, 62450, 210, 178),
  size(1, '1', 83690, 77790, 245, 208),
  size(0, '1/0', 105600, 98980, 285, 242),
  size(-1, '2/0', 133100, 125100, 330, 280),
  size(-3, '4/0', 211600, 205500, 445, 378),
];

export const WIRE_ORIGIN: TableOrigin = {
  place: 'any; written for boats',
  edition: 'ABYC E-11 table, 105 degC single conductors, as reprinted',
  date: 'unknown',
  source: 'ABYC E-11 table as reprinted: circular mils of AWG and SAE cable, ampacity',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: 'SAE cable has 3 to 12 % less copper than AWG of the same number. Bundled conductors carry less.',
};
