import { ROLES } from './people-link.ts';
import type { FieldWords } from '../part-form/part-fields.tsx';

/** What the shop's settings are called where they are typed. */
const LABELS: Readonly<Record<string, string>> = {
  name: 'Name',
  address: 'Address',
  initials: 'Serial numbers begin with',
  mailFrom: 'Letters come from',
  labourCostCentsPerHour: 'An hour costs the shop [$]',
  labourRateCentsPerHour: 'An hour is sold for [$]',
  operations: 'Work',
  'operations.name': 'What is done',
  'operations.hours': 'Hours',
  'operations.per': 'For each',
  'operations.kinds': 'Kinds of part',
  'operations.costCentsPerHour': 'Costs an hour [$]',
  'operations.rateCentsPerHour': 'Sold an hour for [$]',
  consumables: 'Small stuff',
  'consumables.name': 'What is used up',
  'consumables.costCents': 'Costs [$]',
  'consumables.priceCents': 'Sold for [$]',
  'consumables.per': 'For each',
  'consumables.kinds': 'Kinds of part',
  'pricing.price': 'How a price is made',
  'operations add': 'Add work',
  'consumables add': 'Add small stuff',
  'pricing.floorsByRole add': 'Add a role',
  'pricing.price.mode': 'Prices are',
  'pricing.price.markupPercent': 'Markup on cost, %',
  'pricing.price.marginPercent': 'Margin of the price, %',
  'pricing.mostDiscountPercent': 'Largest discount, %',
  'pricing.leastMarginPercent': 'Margin that a discount leaves at least, %',
  'pricing.floorsByRole': 'Who is held to less',
  'pricing.floorsByRole.role': 'Who',
  'pricing.floorsByRole.mostDiscountPercent': 'Largest discount, %',
  'pricing.floorsByRole.leastMarginPercent': 'Margin left at least, %',
  'pricing.freightCents': 'Freight of a rig [$]',
  'pricing.tax': 'Sales tax is reckoned',
  'pricing.tax.percent': 'Tax, %',
  'pricing.tax.on': 'On',
  validDays: 'A quote holds, days',
  depositPercent: 'To pay on order, %',
  terms: 'Terms, one a line',
  assemblyDays: 'Parts in hand to tested rig, working days',
  hoursPerWeek: 'All hands build, hours a week',
};

const CHOICES: Readonly<Record<string, string>> = {
  'pricing.price.mode list': 'the list prices of the parts',
  'pricing.price.mode cost-plus': 'cost and a markup',
  'pricing.price.mode target-margin': 'cost, so that a margin is left',
  'pricing.tax.on everything': 'parts and work',
  'pricing.tax.on goods': 'parts, hose and small stuff',
};

export const SHOP_WORDS: FieldWords = {
  label: (place) => LABELS[place],
  choice: (place, choice) =>
    place === 'pricing.floorsByRole.role'
      ? ROLES[choice as keyof typeof ROLES]
      : CHOICES[`${place} ${choice}`],
};

/** A field as a difference names it, called as on the page: `operations[weld].hours` is "Work, weld: Hours". */
export function fieldInShopWords(field: string): string {
  const label = (place: string) => (LABELS[place] ?? place).replace(/ \[\$\]$/, '');
  const [, list, entry, inner] = /^([^[]*)\[([^\]]*)\](.*)$/.exec(field) ?? [];
  if (list === undefined) return label(field);
  const head = `${label(list)}, ${entry!.replaceAll('-', ' ')}`;
  return inner === '' ? head : `${head}: ${label(`${list}${inner}`)}`;
}

/** A refusal with the field called as it is called on the page. */
export function inShopWords(field: string, message: string): string {
  const label = LABELS[field.replace(/\[\d+\]/g, '')];
  return label === undefined ? message : message.replace(field, `"${label.replace(/ \[\$\]$/, '')}"`);
}
