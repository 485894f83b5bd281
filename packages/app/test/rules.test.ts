import { describe, expect, it } from 'vitest';
import { main } from '../src/cli/main.ts';
import { rules } from '../src/documents/rules.ts';

async function run(...argv: string[]) {
  let [out, err] = ['', ''];
  const code = await main(argv, { out: (t) => (out += `${t}\n`), err: (t) => (err += `${t}\n`) });
  return { code, out, err };
}

describe('the list of laws and guidance', () => {
  it('has every table that differs by place or year, each with place, edition, date, evidence and who checked it', () => {
    const list = rules();
    for (const o of list)
      for (const text of [o.place, o.edition, o.date, o.source, o.evidence, o.checkedBy])
        expect(text, JSON.stringify(o)).not.toBe('');
    const text = JSON.stringify(list);
    for (const law of [
      '49 CFR 393.102',
      '49 CFR 393.110',
      '40 CFR 170.405',
      'FOCUS',
      'COMAR',
      '393.42',
      'ISO 16122',
    ])
      expect(text).toContain(law);
    for (const law of ['New Hampshire', 'Texas', 'New York', 'Victoria', 'ISO 730', 'ISO 16119-4', '393.108'])
      expect(text).toContain(law);
    expect(new Set(list.map((o) => JSON.stringify(o))).size).toBe(list.length);
  });

  it('is printed by place, narrowed by words, and says so when no rule speaks of them', async () => {
    const all = await run('rules');
    expect(all.code).toBe(0);
    expect(all.out).toContain('checked by nobody yet against the text in force');
    expect(all.out).toContain('Local law and the product label come first');
    const texas = await run('rules', 'texas');
    expect(texas.out).toContain('Texas');
    expect(texas.out.length).toBeLessThan(all.out.length / 4);
    const json = JSON.parse((await run('rules', '--json', 'drift')).out) as { place: string }[];
    expect(json.length).toBeGreaterThan(0);
    const none = await run('rules', 'moon');
    expect(none.code).toBe(1);
    expect(none.err).toContain('moon');
  });
});
