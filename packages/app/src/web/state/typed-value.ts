import type { Given } from '../protocol.ts';

/**
 * What a typed text puts into the document. A bare number keeps the unit that stood in the box; whole numbers and money
 * become numbers. A text that is none of these goes in as it is, for the engine to refuse by name.
 */
export function typedValue(given: Pick<Given, 'sort'>, text: string, shown: string): string | number {
  const plain = text.trim();
  switch (given.sort) {
    case 'money': {
      const figure = plain.replace(/^\$\s*/, '').replaceAll(',', '');
      return /^\d+(\.\d{1,2})?$/.test(figure) ? Math.round(Number(figure) * 100) : text;
    }
    case 'number':
      return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : text;
    case 'text':
      return text;
    default: {
      const unit = /^[−-]?[\d.,]+(?:\s+\d+\/\d+|\/\d+)?(\s*\D.*)$/.exec(shown)?.[1]?.trim();
      return /^[−-]?[\d.,]+$/.test(plain) && unit !== undefined ? `${plain} ${unit}` : text;
    }
  }
}
