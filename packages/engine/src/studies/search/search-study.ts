// What comes of a search, as plain data.

import type { Edit } from '../../cabinet/cabinet.ts';
import type { Want } from '../wants.ts';
import type { CloseLimit, NamedLimit, Undone } from './why.ts';

export interface SearchVariant {
  readonly edits: readonly Edit[];
  readonly changes: readonly { readonly id: string; readonly from: string; readonly to: string }[];
  readonly comesTo: Readonly<Partial<Record<Want, number>>>;
  /** Middle price of what must be bought; absent when something has none. */
  readonly price?: number;
  /** Limits that it breaks and that some other variant keeps, or that it breaks further than the cabinet as it stands. */
  readonly breaks: readonly NamedLimit[];
  /** Share of samples in which it breaks no limit but those that no variant keeps; absent where it was not varied. */
  readonly chance?: number;
  /** Limits that it keeps in fewer than nine samples of ten. */
  readonly unsure?: readonly (NamedLimit & { readonly chance: number })[];
}

export interface SearchStudy {
  readonly version: 1;
  readonly currency: string;
  readonly wants: readonly Want[];
  readonly choices: readonly {
    readonly id: string;
    readonly values: readonly string[];
    readonly asItStands: number;
    readonly assumed: boolean;
  }[];
  /** Variants that the choices make, and how many of them were run. */
  readonly variants: number;
  readonly ran: number;
  /** Of these: left off at the first broken limit; could not be read or run, and why the first ones could not. */
  readonly abandoned: number;
  readonly failed: number;
  readonly faults: readonly string[];
  /** Every variant was run. */
  readonly complete: boolean;
  /** No single change of the winner is better: all were run. */
  readonly closed: boolean;
  readonly base: SearchVariant;
  /** With several wants the one of the front that lies nearest to the best of all; absent when nothing was run. */
  readonly winner?: SearchVariant;
  /** No variant keeps every limit that can be kept at all: the winner breaks least. */
  readonly keepsAll: boolean;
  /** Limits that every variant that was run breaks: they are not searched for, and may not be broken much further. */
  readonly givenUp: readonly NamedLimit[];
  /** By the first want. */
  readonly front: readonly SearchVariant[];
  /** Limits that the winner keeps with little to spare. */
  readonly close: readonly CloseLimit[];
  /** What keeps from more of the first want: limits broken by variants that are better in it, the most frequent first. */
  readonly inTheWay: readonly (NamedLimit & { readonly times: number })[];
  readonly undone: readonly Undone[];
  /** What a step in another want costs, among the variants that were run. */
  readonly next: readonly NextStep[];
  /** Every variant that was run to its end, for a picture; `keeps`: it breaks no more than the winner. */
  readonly cloud: readonly { readonly comesTo: SearchVariant['comesTo']; readonly keeps: boolean }[];
  readonly samples: { readonly asked: number };
  readonly seed: number;
  readonly stopped: boolean;
}

/** The cheapest known way, in the wants that were searched for, to be better in one. */
export interface NextStep {
  readonly want: Want;
  readonly better: number;
  /** By how much the other wants are worse; below 0 they are better. */
  readonly worse: Readonly<Partial<Record<Want, number>>>;
  /** From the winner. */
  readonly changes: SearchVariant['changes'];
}
