// Every limit of fit: air beside what moves, room for hands, what passes an opening, what one person lifts.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Part, Side } from '../machine-solids.ts';
import type { Limit } from '../measure.ts';
import { tradeLimit } from '../person-limit.ts';
import { GAP_ABOVE, MACHINE_GAP, PLUG_GAP } from '../standing-machines.ts';

const PRACTICE = 'common practice, no source';

export const machineGap = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'machine-gap',
    'at-least',
    MACHINE_GAP,
    `20 to 25 mm of air beside hot or moving parts, ${PRACTICE}`,
  );

export const gapAbove = (cabinet: Cabinet): Limit =>
  tradeLimit(cabinet, 'gap-above', 'at-least', GAP_ABOVE, `50 mm above the highest moving point, ${PRACTICE}`);

export const plugGap = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'plug-gap',
    'at-least',
    PLUG_GAP,
    `60 to 75 mm behind a straight mains plug, about 40 mm behind an angled one, ${PRACTICE}`,
  );

/** Before a fan: 50 mm, or its diameter when it is smaller. Before a plain hole: as much as lets its whole area in round the edge. */
export const openingGap = (cabinet: Cabinet, fan: number, hole: number): Limit =>
  fan > 0
    ? tradeLimit(
        cabinet,
        'opening-gap',
        'at-least',
        Math.min(0.05, fan),
        `50 mm before a fan, or one diameter of a smaller one, ${PRACTICE}`,
      )
    : tradeLimit(
        cabinet,
        'opening-gap',
        'at-least',
        hole / 4,
        'a quarter of its width: then the air has as much room round its edge as in the hole (geometry)',
      );

export const wayOut = (cabinet: Cabinet): Limit =>
  tradeLimit(cabinet, 'way-out', 'at-least', 0.02, `20 mm beside what is brought through an opening, ${PRACTICE}`);

export const handRoom = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'hand-room',
    'at-least',
    0.12,
    'a fist wants an opening of 120 mm, 150 mm to turn something (EN 547-1 and EN 547-3, from memory)',
  );

export const reachLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(cabinet, 'reach', 'at-most', 0.55, `beyond 550 mm a forearm does not work reliably, ${PRACTICE}`);

/** Breadth of a hand without its thumb, m. EN 547-3 (2008), from memory. */
export const HAND = 0.097;

export const spoolOff = (cabinet: Cabinet, width: number): Limit =>
  tradeLimit(
    cabinet,
    'spool-off',
    'at-least',
    width + HAND,
    `its own width along the axle and a hand of 97 mm (EN 547-3, from memory); ${PRACTICE}`,
  );

export const liftLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'lift',
    'at-most',
    25,
    'ISO 11228-1 (2003), reference mass of 25 kg close to the body, from memory; far less at arm’s length or for a mixed population',
  );

/** What a person wants behind an open door, m. */
export const PERSON = 0.6;

export const swingRoom = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'swing-room',
    'at-least',
    0,
    `the sweep of the door and 600 mm for a person, 900 mm in a passage, ${PRACTICE}`,
  );

/** The limit that holds for a part on one side. */
export function airLimit(cabinet: Cabinet, { air }: Part, side: Side): Limit {
  if (air === 'plug' || air === 'lid') return plugGap(cabinet);
  return air === 'arch' && side === 'top' ? gapAbove(cabinet) : machineGap(cabinet);
}
