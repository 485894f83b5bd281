import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** What the yard test reads; the same word in every edition. */
export const ACCEPTANCE_ITEMS = [
  'gauge-error',
  'gauge-division',
  'gauge-diameter',
  'pulsation',
  'air-chamber-charge',
  'agitation-return',
  'agitation-concentration',
  'leak-test-pressure',
  'leak-drops',
  'shut-off-time',
  'drip-after-shut-off',
  'pressure-rise-on-section-close',
  'regulator-return',
  'regulator-hold',
  'pressure-at-tips',
  'tip-flow',
  'transverse-groove',
  'transverse-variation',
  'left-right-flow',
  'tip-spacing',
  'tip-plumb',
  'fan-twist',
  'tip-height-spread',
  'boom-sag',
  'flow-meter',
  'speed-indicator',
  'suction-filter-open',
  'total-residual',
  'container-residue',
  'tank-volume',
] as const;
export type AcceptanceItem = (typeof ACCEPTANCE_ITEMS)[number];

/** One limit. Bands rise in the expected (true, nominal, working) value; the first whose `upTo` reaches it holds. */
export interface AcceptanceLimit {
  readonly item: AcceptanceItem;
  /** Only for this kind of rig; absent: any. */
  readonly rig?: 'boom' | 'orchard';
  /**
   * deviation: how far measured is from expected, either way;
   * at-most / at-least: measured itself; between: measured within both.
   */
  readonly sense: 'deviation' | 'at-most' | 'at-least' | 'between';
  /** Unit of measured and of an absolute limit. */
  readonly unit: string;
  readonly bands: readonly AcceptanceBand[];
  /** False: recalled, not read. */
  readonly seen: boolean;
  readonly note?: string;
}

export interface AcceptanceBand {
  /** Expected value up to which this band holds; absent: any. */
  readonly upTo?: number;
  /** True when the end itself belongs to the next band. */
  readonly below?: true;
  /** Expected value from which on there is a limit at all. */
  readonly from?: number;
  /** Limit in the unit. */
  readonly absolute?: number;
  /** Limit as a share of the expected value. */
  readonly share?: number;
  /** For 'between': the lower end, in the same way as the limit. */
  readonly lowAbsolute?: number;
  readonly lowShare?: number;
}

export interface AcceptanceEdition {
  readonly id: string;
  readonly origin: TableOrigin;
  readonly limits: readonly AcceptanceLimit[];
}

const bar = (v: number) => v * 1e5;
const deg = (v: number) => (v * Math.PI) / 180;
const litrePerMinute = 1e-3 / 60;

export const ACCEPTANCE_EDITIONS: readonly AcceptanceEdition[] = [
  {
    id: 'france-2008',
    origin: {
      place: 'France',
      edition: 'arrete of 18 December 2008 (AGRP0828914A), Annex IV, sprayers in use',
      date: '2008-12-18',
      source: 'France, arrete du 18 decembre 2008 (AGRP0828914A), Annex IV',
      evidence: 'seen',
      checkedBy: NOT_CHECKED,
      note: 'for inspection of sprayers in use; taken here as limits for a new rig',
    },
    limits: [
      {
        item: 'gauge-error',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ from: bar(1), upTo: bar(2), absolute: bar(0.2) }, { share: 0.1 }],
        seen: true,
        note: 'no limit is given below 1 bar',
      },
      {
        item: 'gauge-division',
        rig: 'boom',
        sense: 'at-most',
        unit: 'Pa',
        bands: [
          { from: bar(1), upTo: bar(8), absolute: bar(0.2) },
          { upTo: bar(20), absolute: bar(1) },
          { absolute: bar(2) },
        ],
        seen: true,
      },
      {
        item: 'gauge-division',
        rig: 'orchard',
        sense: 'at-most',
        unit: 'Pa',
        bands: [
          { from: bar(1), upTo: bar(5), absolute: bar(0.2) },
          { upTo: bar(20), absolute: bar(1) },
          { absolute: bar(2) },
        ],
        seen: true,
      },
      {
        item: 'gauge-diameter',
        sense: 'at-least',
        unit: 'm',
        bands: [{ absolute: 0.063 }],
        seen: true,
        note: 'within reach of the driver; elsewhere 0.1 m',
      },
      {
        item: 'pulsation',
        sense: 'at-most',
        unit: 'Pa',
        bands: [
          { upTo: bar(6), absolute: bar(0.4) },
          { upTo: bar(16), absolute: bar(1) },
          { absolute: bar(4) },
        ],
        seen: true,
      },
      {
        item: 'air-chamber-charge',
        sense: 'between',
        unit: 'Pa',
        bands: [{ lowShare: 0.3, share: 0.7 }],
        seen: true,
        note: 'share of the working pressure',
      },
      {
        item: 'leak-drops',
        sense: 'at-most',
        unit: '1/s',
        bands: [{ absolute: 1 / 5 }],
        seen: true,
        note: 'more than a drop in 5 s is a major fault; no leak at all is the aim',
      },
      { item: 'shut-off-time', sense: 'at-most', unit: 's', bands: [{ absolute: 5 }], seen: true },
      {
        item: 'pressure-rise-on-section-close',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ share: 0.1 }],
        seen: true,
      },
      {
        item: 'regulator-return',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ share: 0.1 }],
        seen: true,
        note: 'drift over 5 min',
      },
      {
        item: 'pressure-at-tips',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ share: 0.1 }],
        seen: true,
        note: 'against the gauge, or against the mean of the other sections',
      },
      {
        item: 'tip-flow',
        sense: 'deviation',
        unit: 'm3/s',
        bands: [{ upTo: litrePerMinute, below: true, share: 0.1 }, { share: 0.15 }],
        seen: true,
        note: 'of nominal; small tips are held tighter',
      },
      { item: 'tip-spacing', sense: 'deviation', unit: 'm', bands: [{ share: 0.05 }], seen: true },
      { item: 'tip-plumb', sense: 'at-most', unit: 'rad', bands: [{ absolute: deg(10) }], seen: true },
      {
        item: 'fan-twist',
        sense: 'between',
        unit: 'rad',
        bands: [{ lowAbsolute: deg(3), absolute: deg(7) }],
        seen: true,
      },
      {
        item: 'boom-sag',
        rig: 'boom',
        sense: 'at-most',
        unit: 'm',
        bands: [{ upTo: 20, below: true, absolute: 0.1 }, { share: 0.005 }],
        seen: true,
        note: 'expected value is the boom width: 1 % of half the width from 20 m on',
      },
      { item: 'flow-meter', sense: 'deviation', unit: 'm3/s', bands: [{ share: 0.05 }], seen: true },
      { item: 'speed-indicator', sense: 'deviation', unit: 'm/s', bands: [{ share: 0.05 }], seen: true },
      {
        item: 'suction-filter-open',
        sense: 'at-most',
        unit: 's',
        bands: [{ absolute: 15 }],
        seen: true,
        note: 'flow from a full tank must have stopped by then',
      },
    ],
  },
  {
    id: 'netherlands-2009',
    origin: {
      place: 'Netherlands',
      edition: 'PT regulation 2009 (BWBR0025530), Annex 1-2',
      date: '2009',
      source:
        'Productschap Tuinbouw, Verordening gebruik verdeelapparatuur bij gewasbeschermingsmiddelen 2009, Annex 1-2',
      evidence: 'seen',
      checkedBy: NOT_CHECKED,
    },
    limits: [
      {
        item: 'gauge-error',
        rig: 'boom',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ from: bar(1), upTo: bar(8), absolute: bar(0.4) }],
        seen: true,
      },
      {
        item: 'gauge-error',
        rig: 'orchard',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ from: bar(5), upTo: bar(15), absolute: bar(1) }],
        seen: true,
      },
      {
        item: 'gauge-division',
        rig: 'boom',
        sense: 'at-most',
        unit: 'Pa',
        bands: [
          { from: bar(1), upTo: bar(5), absolute: bar(0.2) },
          { upTo: bar(8), absolute: bar(1) },
        ],
        seen: true,
      },
      {
        item: 'gauge-division',
        rig: 'orchard',
        sense: 'at-most',
        unit: 'Pa',
        bands: [{ from: bar(5), upTo: bar(15), absolute: bar(1) }],
        seen: true,
      },
      {
        item: 'gauge-diameter',
        rig: 'boom',
        sense: 'at-least',
        unit: 'm',
        bands: [{ absolute: 0.063 }],
        seen: true,
      },
      {
        item: 'gauge-diameter',
        rig: 'orchard',
        sense: 'at-least',
        unit: 'm',
        bands: [{ absolute: 0.06 }],
        seen: true,
      },
      {
        item: 'leak-test-pressure',
        rig: 'boom',
        sense: 'at-least',
        unit: 'Pa',
        bands: [{ absolute: bar(10) }],
        seen: true,
      },
      {
        item: 'leak-test-pressure',
        rig: 'orchard',
        sense: 'at-least',
        unit: 'Pa',
        bands: [{ absolute: bar(20) }],
        seen: true,
      },
      {
        item: 'drip-after-shut-off',
        sense: 'at-most',
        unit: 'm3',
        bands: [{ absolute: 2e-6 }],
        seen: true,
        note: 'from 5 s after shut-off',
      },
      {
        item: 'regulator-hold',
        rig: 'boom',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ absolute: bar(0.2) }],
        seen: true,
      },
      {
        item: 'regulator-hold',
        rig: 'orchard',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ absolute: bar(1) }],
        seen: true,
      },
      {
        item: 'agitation-return',
        sense: 'at-least',
        unit: 'm3/s',
        bands: [{ share: 0.05 / 60 }],
        seen: true,
        note: 'expected value is the nominal tank volume; 2.5 % a minute when a jet injector or paddle is fitted',
      },
      {
        item: 'transverse-groove',
        rig: 'boom',
        sense: 'deviation',
        unit: 'of mean',
        bands: [{ share: 0.15 }],
        seen: true,
        note: 'each groove of 10 cm against the mean',
      },
      {
        item: 'tip-flow',
        rig: 'orchard',
        sense: 'deviation',
        unit: 'm3/s',
        bands: [{ share: 0.1 }],
        seen: true,
        note: 'against the mean of the tips, not against nominal',
      },
      {
        item: 'left-right-flow',
        rig: 'orchard',
        sense: 'deviation',
        unit: 'm3/s',
        bands: [{ share: 0.2 }],
        seen: true,
      },
      {
        item: 'tip-height-spread',
        rig: 'boom',
        sense: 'at-most',
        unit: 'm',
        bands: [{ absolute: 0.1 }],
        seen: true,
      },
      { item: 'boom-sag', rig: 'boom', sense: 'at-most', unit: 'm', bands: [{ absolute: 0.1 }], seen: true },
      { item: 'flow-meter', sense: 'deviation', unit: 'm3/s', bands: [{ share: 0.05 }], seen: true },
    ],
  },
  {
    id: 'iso-16122-recalled',
    origin: {
      place: 'ISO',
      edition: 'ISO 16122-2 and -3, edition of 2015 as recalled; editions of 2024 apply and were not read',
      date: '2015',
      source: 'ISO 16122-2, -3; from memory',
      evidence: 'memory',
      checkedBy: NOT_CHECKED,
      note: 'never print a certificate from this edition',
    },
    limits: [
      {
        item: 'gauge-error',
        sense: 'deviation',
        unit: 'Pa',
        bands: [{ upTo: bar(2), absolute: bar(0.2) }, { share: 0.1 }],
        seen: false,
      },
      { item: 'pressure-at-tips', sense: 'deviation', unit: 'Pa', bands: [{ share: 0.1 }], seen: false },
      {
        item: 'tip-flow',
        sense: 'deviation',
        unit: 'm3/s',
        bands: [{ upTo: litrePerMinute, below: true, share: 0.15 }, { share: 0.1 }],
        seen: false,
        note: 'of nominal; small tips are held looser: the reverse of the French text',
      },
      {
        item: 'transverse-variation',
        rig: 'boom',
        sense: 'at-most',
        unit: '-',
        bands: [{ absolute: 0.1 }],
        seen: false,
        note: 'coefficient of variation',
      },
      {
        item: 'transverse-groove',
        rig: 'boom',
        sense: 'deviation',
        unit: 'of mean',
        bands: [{ share: 0.2 }],
        seen: false,
      },
    ],
  },
  {
    id: 'iso-16119-new',
    origin: {
      place: 'ISO',
      edition: 'ISO 16119-2, -3 and -4, new sprayers',
      date: '2013/2014',
      source: 'ISO 16119-3:2013 and -4:2014 excerpts; ISO 16119-2 from memory',
      evidence: 'part seen',
      checkedBy: NOT_CHECKED,
    },
    limits: [
      {
        item: 'transverse-variation',
        rig: 'boom',
        sense: 'at-most',
        unit: '-',
        bands: [{ absolute: 0.07 }],
        seen: false,
        note: 'at design height and pressure; 9 % over the range of heights and pressures',
      },
      {
        item: 'agitation-concentration',
        sense: 'deviation',
        unit: 'kg/m3',
        bands: [{ share: 0.15 }],
        seen: false,
      },
      {
        item: 'total-residual',
        rig: 'boom',
        sense: 'at-most',
        unit: 'm3',
        bands: [{ share: 0.005 }],
        seen: false,
        note: 'expected value is the nominal tank; 2 L for each metre of boom come on top',
      },
      {
        item: 'tank-volume',
        sense: 'at-least',
        unit: 'm3',
        bands: [{ share: 1.05 }],
        seen: false,
        note: 'true volume against nominal',
      },
      {
        item: 'container-residue',
        sense: 'at-most',
        unit: 'm3',
        bands: [{ share: 0.0001 }],
        seen: true,
        note: 'expected value is the volume of the container',
      },
      {
        item: 'tip-flow',
        sense: 'deviation',
        unit: 'm3/s',
        bands: [{ share: 0.05 }],
        seen: false,
        note: 'new tips, ISO 5682-1',
      },
    ],
  },
];
