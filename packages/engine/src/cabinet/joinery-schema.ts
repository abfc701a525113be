// Keys of `joinery:`.

import { type Corner, corners, type LeafPlace, leafPlaces } from './joinery.ts';
import { mapOf, quantity, type Schema, thing, word } from './shape.ts';
import type { Given } from './spec.ts';

type Maybe<T> = T | undefined;

export interface LeafSpec {
  readonly lies?: Maybe<LeafPlace>;
  readonly gap?: Given;
}

export interface JoinerySpec {
  readonly corners?: Maybe<Corner>;
  readonly housing?: Given;
  readonly doors?: Maybe<Readonly<Record<string, LeafSpec>>>;
  readonly measured?: Maybe<Readonly<Record<string, NonNullable<Given>>>>;
}

export function joinerySchema(): Schema<JoinerySpec> {
  const leaf = thing(
    {
      lies: word(leafPlaces, 'before the edges of the carcass, or in its opening').optional(),
      gap: quantity('length', 'between the leaf and what stands beside it', { above: 0, to: 0.02 }).optional(),
    },
    'how a leaf lies',
  );
  return thing(
    {
      corners: word(corners, 'how the boards of the carcass meet').optional(),
      housing: quantity('length', 'depth of the groove for the end of a shelf', { above: 0, to: 0.03 }).optional(),
      doors: mapOf(leaf, 'how each door lies', 'door').optional(),
      measured: mapOf(
        quantity('length', 'its true thickness', { above: 0, to: 0.2 }),
        'what a caliper says, by board and written thickness, such as plywood 18 mm',
        'board and thickness',
      ).optional(),
    },
    'how it is put together: for papers',
  ) as unknown as Schema<JoinerySpec>;
}
