import type { FromEngine, Pictures, Spared } from '../protocol.ts';
import type { DeskState } from './desk-state.ts';

/** What the engine worked out beside the figures, as it stands on the desk; nothing when it is of an older rig or another slot. */
export function toldOf(
  message: FromEngine,
  version: number,
  slot: string | undefined,
): Partial<DeskState> | undefined {
  if (!('version' in message) || message.version !== version) return undefined;
  switch (message.type) {
    case 'plumbing-drawn':
      return { plumbingPicture: message.picture };
    case 'choices':
      return { choices: message.choices };
    case 'curves':
      return { curves: message.curves };
    case 'ways-out':
      return { ways: message.ways };
    case 'effects':
      return message.effects.slot === slot ? { effects: message.effects } : undefined;
    default:
      return undefined;
  }
}

/** New drawings, beside which those that were spared stay as they are. */
export function picturesAfter(
  before: Pictures | undefined,
  { pictures, spared = [] }: FromEngine & { type: 'drawn' },
): Pick<Partial<DeskState>, 'pictures'> {
  if (pictures === undefined) return {};
  const stays = (name: Spared) => spared.includes(name) && before?.[name] !== undefined;
  return {
    pictures: {
      ...(stays('line') ? { line: before!.line! } : {}),
      ...(stays('rig') ? { rig: before!.rig! } : {}),
      ...pictures,
    },
  };
}
