import { describe, expect, it } from 'vitest';
import { standingFrom, type JobFacts } from './job-standing.ts';

const at = (day: number) => `2026-03-${String(day).padStart(2, '0')}T09:00:00.000Z`;
const job = { id: 'cart', version: 3, title: 'Cart', customer: 'Parks', madeAt: at(1), changedAt: at(4) };
const quote = (state: JobFacts['quotes'][number]['state'], day: number, question = false) => ({
  number: 'Q-0001',
  revision: 'B',
  state,
  since: at(day),
  question,
});
const machine = { serial: 'LF-0326-1', madeAt: at(12) };
const stands = (facts: Partial<JobFacts>) => {
  const { state, since, waitsFor, to } = standingFrom({ job, quotes: [], machines: [], ...facts });
  return [state, since, waitsFor, to];
};

describe('How far a job has come', () => {
  it.each<[string, Partial<JobFacts>, string[]]>([
    ['made and not touched', { job: { ...job, version: 1 } }, ['asked', at(1), 'builder', 'design it']],
    ['worked on', {}, ['being-designed', at(4), 'builder', 'make a quote']],
    [
      'a quote drawn up',
      { quotes: [quote('drawn', 5)] },
      ['being-designed', at(5), 'builder', 'send Q-0001 B'],
    ],
    ['sent', { quotes: [quote('sent', 6)] }, ['quoted', at(6), 'customer', 'answer Q-0001']],
    [
      'a question',
      { quotes: [quote('sent', 6, true)] },
      ['quoted', at(6), 'builder', 'answer a question about Q-0001'],
    ],
    [
      'taken',
      { quotes: [quote('sent', 6), quote('accepted', 8)] },
      ['accepted', at(8), 'shop hand', 'begin the machine'],
    ],
    ['refused', { quotes: [quote('declined', 9)] }, ['declined', at(9), 'nobody', '']],
    ['at it again', { quotes: [quote('declined', 3)] }, ['being-designed', at(4), 'builder', 'make a quote']],
    [
      'begun',
      { quotes: [quote('accepted', 8)], machines: [machine] },
      ['being-built', at(12), 'shop hand', 'build and test LF-0326-1'],
    ],
    [
      'tested',
      { machines: [{ ...machine, testedAt: at(20) }] },
      ['tested', at(20), 'builder', 'hand over LF-0326-1'],
    ],
    [
      'handed over',
      { machines: [machine], mark: { kind: 'handed-over', at: at(21) } },
      ['handed-over', at(21), 'nobody', ''],
    ],
    [
      'stopped',
      { quotes: [quote('sent', 6)], mark: { kind: 'stopped', at: at(7) } },
      ['stopped', at(7), 'nobody', ''],
    ],
    [
      'taken up again',
      { quotes: [quote('sent', 6)], mark: { kind: 'taken-up', at: at(8) } },
      ['quoted', at(6), 'customer', 'answer Q-0001'],
    ],
  ])('%s', (_, facts, expected) => {
    expect(stands(facts)).toEqual(expected);
  });

  it('keeps its quote and its machine from then on, so that nobody makes either again', () => {
    const kept = (facts: Partial<JobFacts>) => {
      const { quote: number, serial } = standingFrom({ job, quotes: [], machines: [], ...facts });
      return [number, serial];
    };
    const begun = { quotes: [quote('accepted', 8)], machines: [machine] };
    expect(kept(begun)).toEqual(['Q-0001', 'LF-0326-1']);
    expect(kept({ ...begun, mark: { kind: 'handed-over', at: at(21) } })).toEqual(['Q-0001', 'LF-0326-1']);
    expect(kept({ quotes: [quote('withdrawn', 8)], machines: [machine] })).toEqual([undefined, 'LF-0326-1']);
    const later = { ...quote('drawn', 10), number: 'Q-0002' };
    expect(kept({ quotes: [quote('accepted', 8), later] })).toEqual(['Q-0001', undefined]);
    expect(kept({ quotes: [quote('sent', 8), later] })).toEqual(['Q-0002', undefined]);
    expect(kept({ quotes: [quote('declined', 9)] })).toEqual(['Q-0001', undefined]);
  });
});
