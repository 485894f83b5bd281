import type { Outlet } from '@spraywright/engine/catalogue';
import type { Aim } from '@spraywright/engine/rig';

/** A duty or a liquid put into the brief or taken out of it, and another thing to aim at. */
export type BriefEdit =
  | { readonly do: 'add-duty'; readonly name: string; readonly outlet: Outlet; readonly liquid: string }
  | { readonly do: 'remove-duty' | 'remove-liquid'; readonly id: string }
  | { readonly do: 'aim-duty'; readonly id: string; readonly aim: Aim | undefined }
  | {
      readonly do: 'add-liquid';
      /** Of the tables; '' for one that only has a name. */
      readonly liquid: string;
      readonly name?: string;
      readonly use: 'spray' | 'flush' | 'winterise';
    };

/** What a brief can be filled from. */
export interface BriefLists {
  /** Outlets that rigs for this kind of work can have, and whether this one has them. */
  readonly outlets: readonly { readonly id: Outlet; readonly name: string; readonly fitted: boolean }[];
  /** Liquids of the tables. */
  readonly liquids: readonly (readonly [id: string, name: string])[];
  /** Families of rigs that serve this kind of work. */
  readonly families: readonly (readonly [id: string, name: string])[];
}
