import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { drawingOnPaper } from './drawing-on-paper.ts';
import { FONT_FILES, fitted, runsOf, signDrop, widthOf, wrap } from './faces.ts';

describe('Runs of a text', () => {
  it('take each sign from the face that has it', () => {
    expect(runsOf('has ≥ 52 ft, Δ 3°', 'semi')).toEqual([
      { text: 'has ', font: 'Sheet Semi' },
      { text: '≥', font: 'Sheet Signs' },
      { text: ' 52 ft, ', font: 'Sheet Semi' },
      { text: 'Δ', font: 'Sheet Semi Greek' },
      { text: ' 3°', font: 'Sheet Semi' },
    ]);
  });

  it('print a mark for what no face has, never a blank', () => {
    expect(
      runsOf('a漢b', 'condensed')
        .map((r) => r.text)
        .join(''),
    ).toBe('a?b');
  });

  it('read line ends as blanks and typed <= as a sign', () => {
    expect(
      runsOf('a\n\tb <= 3', 'semi')
        .map((r) => r.text)
        .join(''),
    ).toBe('a b ≤ 3');
  });
});

describe('Widths', () => {
  it('agree with the advances that fontconfig-independent arithmetic gives: two texts are as wide as their sum', () => {
    const sum = widthOf('Tank', 'semi', false, 10) + widthOf(' 200', 'semi', false, 10);
    expect(widthOf('Tank 200', 'semi', false, 10)).toBeCloseTo(sum, 9);
    expect(widthOf('W', 'semi', true, 10)).toBeGreaterThan(widthOf('i', 'semi', true, 10));
    expect(widthOf('Wide', 'semi', false, 20)).toBeCloseTo(2 * widthOf('Wide', 'semi', false, 10), 9);
  });

  it('break lines that all fit, losing no letter', () => {
    const text = 'Hoses and fittings outlast a slammed trigger, and averyveryverylongwordwithoutanyblank too';
    const lines = wrap(text, 'semi', false, 10, 80);
    for (const line of lines) expect(widthOf(line, 'semi', false, 10)).toBeLessThanOrEqual(80);
    expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
  });

  it('make a long name smaller until it fits, and refuse what cannot fit', () => {
    const box = { width: 100, height: 20, size: 14 };
    expect(fitted('Short', 'semi', true, box)).toEqual({ size: 14, lines: ['Short'] });
    const long = fitted('A name much too long for the box at this size', 'semi', true, box);
    expect(long.size).toBeLessThan(14);
    expect(long.lines.join(' ')).toBe('A name much too long for the box at this size');
    expect(() => fitted('W'.repeat(4000), 'semi', true, box)).toThrow(/does not fit a box of 100 by 20/);
  });
});

describe('Signs', () => {
  it('lift a line that they would push down, and no other line', () => {
    expect(signDrop('52 ft', 'condensed', 10)).toBe(0);
    expect(signDrop('≥ 52 ft', 'condensed', 10)).toBeGreaterThan(0);
  });
});

describe('A drawing on paper', () => {
  it('has the two weights of papers and Greek from its own face', () => {
    expect(drawingOnPaper('<text font-weight="640">Δ 3</text><text font-weight="500">b</text>')).toBe(
      '<text font-weight="bold"><tspan font-family="Sheet Condensed Greek">Δ</tspan> 3</text><text font-weight="normal">b</text>',
    );
  });
});

describe('The faces', () => {
  it('stand in the project', () => {
    expect(FONT_FILES.size).toBe(10);
    for (const file of FONT_FILES) expect(() => execFileSync('test', ['-r', file])).not.toThrow();
  });
});
