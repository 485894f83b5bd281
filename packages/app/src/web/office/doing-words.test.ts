import { expect, it } from 'vitest';
import { doingInWords } from './doing-words.ts';

it('What was changed is told in the words of its page', () => {
  const said = (aboutKind: string, what: string) => doingInWords({ aboutKind, what });
  expect(
    said('shop', 'operations[lay-out].hours 1.5 becomes 2.5; pricing.freightCents nothing becomes 25000'),
  ).toBe('Work, lay out: Hours 1.5 becomes 2.5; Freight of a rig nothing becomes $250');
  expect(said('parts', 'costCents 1000 becomes 1200; law.displacement 35 cm3/rev becomes 36 cm3/rev')).toBe(
    'costs the shop $10 becomes $12; how it moves the liquid, volume for each turn 35 cm3/rev becomes 36 cm3/rev',
  );
  expect(said('parts', 'retired')).toBe('retired');
  expect(said('jobs', 'Notes')).toBe('Notes');
});
