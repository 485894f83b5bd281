import { describe, expect, it } from 'vitest';
import { piecesOf } from './redraw.ts';

describe('a drawing in pieces', () => {
  it.each([
    [
      '<svg a="1"><g><path/><g></g></g><path/><text>x <tspan>y</tspan></text></svg>',
      ['<svg a="1">', '<g><path/><g></g></g>', '<path/>', '<text>x <tspan>y</tspan></text>', '</svg>'],
    ],
    ['<svg><title>a &gt; b</title></svg>', ['<svg>', '<title>a &gt; b</title>', '</svg>']],
    ['<svg></svg>', ['<svg>', '</svg>']],
    ['', ['']],
  ])('takes %s apart into its elements and loses nothing', (svg, pieces) => {
    expect(piecesOf(svg)).toEqual(pieces);
    expect(piecesOf(svg).join('')).toBe(svg);
  });
});
