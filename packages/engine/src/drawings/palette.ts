/** Colours of one sheet. Three signals (liquid, broken, thin) and nothing else carries meaning; kept is plain ink. */
export interface Palette {
  readonly paper: string;
  /** Opened slot, lit column: no meaning alone. */
  readonly paper2: string;
  readonly ink: string;
  readonly ink2: string;
  readonly rule: string;
  readonly leaf: string;
  readonly liquid: string;
  readonly liquidTint: string;
  readonly liquidRows: string;
  readonly broken: string;
  readonly brokenTint: string;
  readonly thin: string;
  readonly thinTint: string;
  /** Line widths are multiplied by this. */
  readonly weight: number;
}

export const PALETTES = {
  day: {
    paper: '#f7f3e8',
    paper2: '#ece5d3',
    ink: '#1c1a17',
    ink2: '#575148',
    rule: '#b3aa97',
    leaf: '#8d8674',
    liquid: '#0b6678',
    liquidTint: '#d3e3df',
    liquidRows: '#5b9aa3',
    broken: '#a8143c',
    brokenTint: '#f2d9d6',
    thin: '#885c00',
    thinTint: '#efe1bd',
    weight: 1,
  },
  night: {
    paper: '#171613',
    paper2: '#272520',
    ink: '#e4dccd',
    ink2: '#a89f8e',
    rule: '#5d574b',
    leaf: '#6f6858',
    liquid: '#6cc7d6',
    liquidTint: '#1d3a40',
    liquidRows: '#3c8491',
    broken: '#ff8c94',
    brokenTint: '#47222a',
    thin: '#e3b14c',
    thinTint: '#3d3115',
    weight: 0.92,
  },
  /** The yard at noon: white and black, heavier lines. */
  sun: {
    paper: '#ffffff',
    paper2: '#efefe9',
    ink: '#000000',
    ink2: '#2c2a26',
    rule: '#8b8b84',
    leaf: '#8d8674',
    liquid: '#00505f',
    liquidTint: '#d5e6e8',
    liquidRows: '#3a7f8b',
    broken: '#960030',
    brokenTint: '#f6d9d9',
    thin: '#744d00',
    thinTint: '#f0e2bd',
    weight: 1.45,
  },
  /** White paper, for print: tint only in liquid, everything readable in black alone. */
  print: {
    paper: '#ffffff',
    paper2: '#ffffff',
    ink: '#1c1a17',
    ink2: '#575148',
    rule: '#b3aa97',
    leaf: '#8d8674',
    liquid: '#0b6678',
    liquidTint: '#e2eeec',
    liquidRows: '#5b9aa3',
    broken: '#a8143c',
    brokenTint: '#ffffff',
    thin: '#885c00',
    thinTint: '#ffffff',
    weight: 1,
  },
} as const satisfies Record<string, Palette>;

export type SheetName = keyof typeof PALETTES;

/** Line weights in px at 1x and their dash patterns, each with its one meaning. */
export const LINES = {
  extra: { width: 3 },
  outline: { width: 1.8 },
  thin: { width: 0.9 },
  hatch: { width: 0.7 },
  centre: { width: 0.7, dash: '11 2.5 1.5 2.5' },
  neighbour: { width: 0.9, dash: '12 2.5 1.5 2.5 1.5 2.5' },
  hidden: { width: 0.9, dash: '5 3' },
  liquid: { width: 2.4 },
  farthest: { width: 1.1, dash: '1.5 4' },
} as const;

/** Families of the sheet, as the page and the papers register them. */
export const FONTS = { semi: 'Sheet Semi', condensed: 'Sheet Condensed', signs: 'Sheet Signs' } as const;
