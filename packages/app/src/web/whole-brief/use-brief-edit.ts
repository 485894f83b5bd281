import { useState } from 'react';
import type { BriefEdit } from './brief-edits.ts';
import { useStore } from '../ui/desk-context.ts';

/** Makes edits of the brief, each one step for Undo; a new duty comes to hand. */
export function useBriefEdit() {
  const store = useStore();
  const [refused, setRefused] = useState<string>();
  /** @returns whether it was made */
  const make = async (edit: BriefEdit): Promise<boolean> => {
    const answer = await store.ask({ about: 'brief-edit', edit });
    if ('refused' in answer) {
      setRefused(`${answer.refused.charAt(0).toUpperCase()}${answer.refused.slice(1)}.`);
      return false;
    }
    setRefused(undefined);
    store.edit(answer.change);
    if (edit.do === 'add-duty') {
      const { duties } = store.job()!.rig.brief as { duties: readonly { id: string }[] };
      store.setDuty(duties.at(-1)!.id);
    }
    return true;
  };
  return { refused, make };
}
