import { describe, expect, it } from 'vitest';
import { designRig, readBrief, startBriefs, startValuesOf } from '@spraywright/engine/rig';
import { demoCatalogue, demoShop } from './demo.ts';

describe('A job begun by its kind of work', () => {
  const [catalogue, shop] = [demoCatalogue(), demoShop()];

  it.each(startBriefs())('has a brief whose every figure is marked as ours, and a rig: $name', ({ raw }) => {
    const read = readBrief(raw);
    expect(read.ok ? [] : read.problems).toEqual([]);
    const marked = startValuesOf(raw);
    const figures = JSON.stringify(raw).match(/"[a-zA-Z0-9]+":"[-0-9.]+ /g) ?? [];
    expect(figures.length).toBeGreaterThan(4);
    for (const figure of figures) {
      const field = /"([a-zA-Z0-9]+)":/.exec(figure)![1]!;
      expect(
        marked.some((m) => m.endsWith(`.${field}`)),
        field,
      ).toBe(true);
    }
    const design = designRig(raw, catalogue, shop);
    if (!design.ok) throw new Error(design.problems.map((p) => p.message).join('\n'));
    const asked = design.proof.promises.find((p) => p.id === 'brief:starts')!;
    expect(asked.state).toBe('unknown');
    expect(asked.cause).toMatch(
      /^\d+ values of the brief are start values of ours that nobody has confirmed/,
    );
    expect(asked.working.some((w) => w.text.includes('tank level'))).toBe(true);
    expect(
      design.proof.promises.filter((p) => p.state === 'broken').map((p) => `${p.sentence}: ${p.cause}`),
    ).toEqual([]);
  });
});
