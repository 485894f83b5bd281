import type { Outlet, Work } from '../catalogue/index.ts';

/**
 * What a job of a kind of work is begun with before the customer has said anything: common practice, no source. What only
 * the customer's vehicle decides is left out, so that its promises stay unknown until somebody asks.
 */
export interface WorkBrief {
  /** As a builder calls it. */
  readonly name: string;
  readonly duty: string;
  readonly outlet: Outlet;
  readonly liquid: { readonly id: string; readonly [field: string]: unknown };
  readonly carrier: { readonly form: string; readonly [field: string]: unknown };
  readonly wishes: { readonly [field: string]: unknown };
}

const WEED_MIX = { id: 'mix', name: 'Weed killer mix', liquid: 'glyphosate_mix' };

export const WORK_BRIEFS: Readonly<Record<Work, WorkBrief>> = {
  'tall-trees': {
    name: 'Tall trees',
    duty: 'Tops of the trees',
    outlet: 'gun',
    liquid: {
      id: 'oil',
      name: 'Horticultural oil',
      liquid: 'hort_oil',
      strength: 2,
      strengthUnit: 'volume %',
    },
    carrier: { form: 'cart' },
    wishes: { drive: 'engine', tank: '200 gal', hose: '200 ft' },
  },
  'spot-and-drench': {
    name: 'Spots and drenching, light cart',
    duty: 'Spots',
    outlet: 'gun',
    liquid: WEED_MIX,
    carrier: { form: 'wagon' },
    wishes: { drive: 'engine', tank: '40 gal', hose: '100 ft' },
  },
  'tractor-spot-and-boom': {
    name: 'Boom and spot gun on a tractor',
    duty: 'Whole field by boom',
    outlet: 'boom',
    liquid: WEED_MIX,
    carrier: { form: 'three-point', ptoSpeed: '540 rpm' },
    wishes: { drive: 'pto', tank: '110 gal' },
  },
  'utility-spot': {
    name: 'Spots from a utility vehicle, 12 V',
    duty: 'Spots',
    outlet: 'gun',
    liquid: WEED_MIX,
    carrier: { form: 'utility-bed' },
    wishes: { drive: 'electric-12v', tank: '25 gal', hose: '50 ft' },
  },
  'roof-wash': {
    name: 'Roof washing',
    duty: 'Roof',
    outlet: 'gun',
    liquid: { id: 'wash', name: 'Bleach wash', liquid: 'naocl_wash', strength: 3.5, strengthUnit: 'trade %' },
    carrier: { form: 'skid' },
    wishes: { drive: 'engine', tank: '100 gal', hose: '150 ft' },
  },
  'road-and-dust': {
    name: 'Dust on roads',
    duty: 'Road, one lane',
    outlet: 'bar',
    liquid: {
      id: 'brine',
      name: 'Magnesium chloride brine',
      liquid: 'mgcl2_brine',
      strength: 30,
      strengthUnit: 'weight %',
    },
    carrier: { form: 'tandem-trailer' },
    wishes: { drive: 'engine', tank: '1000 gal' },
  },
  'nurse-and-batch': {
    name: 'Mixing and filling other sprayers',
    duty: 'Fill a sprayer',
    outlet: 'transfer',
    liquid: WEED_MIX,
    carrier: { form: 'tandem-trailer' },
    wishes: { drive: 'engine', tank: '1000 gal', hose: '30 ft' },
  },
};
