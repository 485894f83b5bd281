/** One size of the ISO 10625 series: 0.4 L/min at 3 bar for each unit of size. */
export interface IsoTip {
  readonly size: string;
  /** Size as a number: '025' is 2.5. */
  readonly units: number;
  readonly colour: string;
  /** Whether the colour was read in a published table; false means from memory. */
  readonly seen: boolean;
}

export const ISO_TIPS: readonly IsoTip[] = [
  { size: '01', units: 1, colour: 'orange', seen: true },
  { size: '015', units: 1.5, colour: 'green', seen: true },
  { size: '02', units: 2, colour: 'yellow', seen: true },
  { size: '025', units: 2.5, colour: 'lilac', seen: true },
  { size: '03', units: 3, colour: 'blue', seen: true },
  { size: '04', units: 4, colour: 'red', seen: true },
  { size: '05', units: 5, colour: 'brown', seen: true },
  { size: '06', units: 6, colour: 'grey', seen: true },
  { size: '08', units: 8, colour: 'white', seen: true },
  { size: '10', units: 10, colour: 'light blue', seen: false },
  { size: '15', units: 15, colour: 'light green', seen: false },
  { size: '20', units: 20, colour: 'black', seen: false },
];

export const ISO_TIPS_SOURCE =
  'ISO 10625: colours and 0.1 gpm a unit at 40 psi seen in Univ. of Arizona 2012 Table 1; 0.4 L/min a unit at 3 bar and sizes 10 to 20 from memory';
