import { expect, it } from 'vitest';
import { readReadings } from './readings-document.ts';
import { readingsOfTest, yardTests, type YardEntry } from './yard-tests.ts';

let minute = 0;
const entry = (kind: string, document: object, by = 'Robin'): YardEntry => {
  const at = `2026-03-03T10:${String(minute++ % 60).padStart(2, '0')}:00.000Z`;
  return { kind, by, at, document: { test: 'monday-1', taken: at, ...document } };
};
const reading = (row: string, more: object, by?: string) => entry('yard-reading', { row, ...more }, by);

it('a test is what its entries make of it, the later of a row in the place of the earlier', () => {
  const { tests, problems } = yardTests([
    entry('yard-conditions', { wind: '2 mph', edition: 'france-2008' }),
    reading('pump-gauge:tops', { value: '40 psi' }),
    reading('drive-speed', { value: '3100 rpm' }, 'Dana'),
    reading('pump-gauge:tops', { value: '400 psi' }),
    reading('bucket:tops:boom', { value: ['20 s', '21 s'] }),
    reading('suction-gauge:tops', { cannot: 'no gauge there' }),
    entry('step-done', { anything: true }),
    entry('yard-conditions', { edition: '', waterTemperature: '60 F' }),
  ]);
  expect(problems).toEqual([]);
  expect(tests).toHaveLength(1);
  const [test] = tests;
  expect(test).toMatchObject({
    id: 'monday-1',
    by: ['Robin', 'Dana'],
    wind: '2 mph',
    waterTemperature: '60 F',
  });
  expect(test).not.toHaveProperty('edition');
  expect(test!.values.get('pump-gauge:tops')).toBe('400 psi');
  expect([...test!.cannot]).toEqual([['suction-gauge:tops', 'no gauge there']]);
  const read = readReadings(readingsOfTest(test!, 'A-1', 'tall-elms'));
  expect(read).toMatchObject({ ok: true, document: { serial: 'A-1', by: 'Robin, Dana' } });
});

it('a row that was read can be unread, and the other way round', () => {
  const { tests } = yardTests([
    reading('drive-speed', { value: '3100 rpm' }),
    reading('drive-speed', { cannot: 'the tachometer is broken' }),
    reading('pump-gauge:tops', { cannot: 'too fast' }),
    reading('pump-gauge:tops', { value: '40 psi' }),
    reading('scale:axle', { value: '900 lb' }),
    reading('scale:axle', {}),
  ]);
  expect([...tests[0]!.values.keys()]).toEqual(['pump-gauge:tops']);
  expect([...tests[0]!.cannot.keys()]).toEqual(['drive-speed']);
});

it('is finished until something more is written down', () => {
  const done = [
    reading('drive-speed', { value: '3100 rpm' }),
    entry('yard-finished', { state: 'pass' }, 'Dana'),
  ];
  expect(yardTests(done).tests[0]!.finished).toMatchObject({ state: 'pass', by: 'Dana' });
  expect(yardTests([...done, reading('drive-speed', { value: '9 rpm' })]).tests[0]).not.toHaveProperty(
    'finished',
  );
});

it('an entry that cannot be read is a problem by field and touches nothing else', () => {
  const { tests, problems } = yardTests([
    entry('yard-reading', { value: '40 psi' }),
    reading('drive-speed', { value: 7 }),
    entry('yard-finished', { state: 'splendid' }),
    reading('drive-speed', { value: '3100 rpm' }),
  ]);
  expect(problems.map((p) => p.path)).toEqual([
    ['entries', 0, 'row'],
    ['entries', 1, 'value'],
    ['entries', 2, 'state'],
  ]);
  expect([...tests[0]!.values.values()]).toEqual(['3100 rpm']);
});
