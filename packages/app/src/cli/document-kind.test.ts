import { describe, expect, it } from 'vitest';
import { parseJsonSource } from '../documents/json-source.ts';
import { mistakenKind, type DocumentKind } from './document-kind.ts';

function told(raw: unknown, wanted: DocumentKind | 'any'): string | undefined {
  const parsed = parseJsonSource('monday.json', JSON.stringify(raw));
  if (!parsed.ok) throw new Error('not JSON');
  return mistakenKind(parsed.source, wanted);
}

describe('a document of another kind than the command wants', () => {
  it('is called what it is, with the command that takes it', () => {
    expect(told({ format: 'spraywright-brief' }, 'rig')).toBe(
      'monday.json: this is a brief; a rig was expected. spraywright design monday.json -o rig.json chooses a rig for it.',
    );
    expect(told({ format: 'spraywright-rig' }, 'brief')).toContain('spraywright prove monday.json');
    expect(told({ format: 'spraywright-readings' }, 'rig')).toContain('They go behind a rig');
  });

  it('is none when it is of that kind, of no kind known, or when any will do', () => {
    expect(told({ format: 'spraywright-rig' }, 'rig')).toBeUndefined();
    expect(told({ format: 'spraywright-brief' }, 'any')).toBeUndefined();
    for (const stranger of [{ format: 'spraywright-moon' }, {}, null, 3, 'rig', { format: 7 }])
      expect(told(stranger, 'rig')).toBeUndefined();
  });
});
