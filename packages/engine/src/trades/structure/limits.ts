// Every limit that the structure trade holds against a cabinet.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Limit } from '../measure.ts';
import { limitFor, ownLimit } from '../person-limit.ts';

/** Sag when the load has just been put on, over the span between supports. */
export function sagLimit(cabinet: Cabinet, span: number): Limit {
  return limitFor(cabinet, {
    id: 'shelf-sag',
    kind: 'at-most',
    value: span / 300,
    source:
      'span/300 at first loading (EN 1995-1-1 table 7.2, lower end of its range, from memory); printers like span/500, the eye sees span/600 (common practice, no source)',
    standing: 'trade',
  });
}

/** Sag in the end, after creep. */
export function laterSagLimit(cabinet: Cabinet, span: number): Limit {
  return limitFor(cabinet, {
    id: 'shelf-sag-years',
    kind: 'at-most',
    value: span / 250,
    source: 'span/250 in the end (EN 1995-1-1 table 7.2, from memory): a borrowed figure, made for buildings',
    standing: 'trade',
  });
}

/** Largest bending stress under all that stands on it. */
export function stressLimit(cabinet: Cabinet, material: string, stress: number): Limit {
  return limitFor(cabinet, {
    id: 'shelf-stress',
    kind: 'at-most',
    value: stress,
    source: `what ${material} may bear for years: bending-stress of the catalogue or of parts:, with its source there`,
    standing: 'trade',
  });
}

/** One pin, when only half of the pins carry because the board is warped. */
export function pinLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'pin-load',
    kind: 'at-most',
    value: 150,
    source: 'common practice, no source: 150 to 200 N for a pin of 5 mm, and a cleat under whatever moves',
    standing: 'trade',
  });
}

/** Mass of the leaf on each of its hinges. */
export function hingeLimit(cabinet: Cabinet, carries: number): Limit {
  return limitFor(cabinet, {
    id: 'hinge-load',
    kind: 'at-most',
    value: carries,
    source:
      'what one hinge carries: its papers, else common practice without a source; clamps for glass 5 to 8 kg a pair',
    standing: 'trade',
  });
}

/** Share of what holds the cabinet down that open doors and pulled-out shelves use up; it tips at 100 %. */
export function tipOpenLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'tip-open',
    kind: 'at-most',
    value: 1,
    source: 'statics: at 100 % it tips by itself; stiff floor, nothing knocks against it',
    standing: 'living room',
  });
}

/** Test load, kg, and the block under the rear that stands for carpet, m. */
export const HUNG: { readonly mass: number; readonly block: number } = { mass: 60 * 0.45359237, block: 0.0109 };

/** The same with the test load at the edge that reaches furthest out. */
export function tipHungLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'tip-hung',
    kind: 'at-most',
    value: 1,
    source:
      'statics with the test load of ASTM F2057-23 (27.2 kg at the edge, 10.9 mm under the rear; a laboratory’s page): made for clothing storage, borrowed here',
    standing: 'living room',
  });
}

/** Horizontal push at the top edge; only the person can say what must not tip it. */
export function pushLimit(cabinet: Cabinet): Limit | undefined {
  return ownLimit(cabinet, 'tip-push', 'at-least');
}

/** Height above the floor without a strap to the wall. */
export function freeHeightLimit(cabinet: Cabinet, depth: number): Limit {
  return limitFor(cabinet, {
    id: 'free-height',
    kind: 'at-most',
    value: Math.min(0.8, 3 * depth),
    source: 'common practice, no source: strap furniture above 800 mm, or above three times its depth, to the wall',
    standing: 'living room',
  });
}

/** Weight of everything as one load on the floor. */
export function floorLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'floor-load',
    kind: 'at-most',
    value: 2000,
    source:
      'EN 1991-1-1 table 6.2, category A: one load of 2 kN (1.5 to 2 kN/m2 spread over the room), from memory; an old floor may bear less',
    standing: 'trade',
  });
}
