// Changes that the power trade proposes, as edits of the file. Every key that it writes is named here.

import type { Cabinet, Edit } from '../../cabinet/cabinet.ts';
import { OUTSIDE, type Strip, WALL } from '../../cabinet/power.ts';
import type { Remedy } from '../measure.ts';
import { set as setIn, type Value } from '../remedy-edits.ts';
import type { HeatUp } from './heat-ups.ts';

const set = (path: readonly string[], value: Value): Edit => setIn(['power', ...path], value);

/** Cross-sections in which wire is sold, m². */
export const SECTIONS: readonly number[] = [0.25, 0.34, 0.5, 0.75, 1, 1.5, 2.5, 4].map((section) => section * 1e-6);
/** Fuses that shops have, A. */
const FUSES = [0.5, 1, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 16, 20];
const SUPPLY_SIZES = [24, 36, 60, 100, 150, 240, 350, 500, 1000];

/** A strip with all that is known of it: the file may not have it at all. */
function stripText({ sockets, rating, where, from, feeds }: Strip): { readonly [key: string]: Value } {
  return {
    ...(sockets > 0 ? { sockets } : {}),
    rating: `${rating} A`,
    where,
    from,
    feeds: [...feeds],
  };
}

const setStrip = (id: string, strip: Strip): Edit => set(['strips', id], stripText(strip));

/** A lock between heat-ups, as long as the longest of them. */
export function staggerStarts({ power }: Cabinet, loads: readonly HeatUp[]): Remedy[] {
  if (power.stagger > 0) return [];
  if (loads.length < 2) return [];
  const minutes = Math.max(5, Math.ceil(Math.max(...loads.map(({ seconds }) => seconds)) / 300) * 5);
  return [
    {
      says: `let machines heat one after another, ${minutes} min apart`,
      edits: [set(['stagger'], `${minutes} min`)],
    },
  ];
}

export function oneByOne(): Remedy[] {
  return [{ says: 'switch everything on one by one', edits: [set(['switched'], 'one by one')] }];
}

export function moreSockets({ power }: Cabinet, id: string, needed: number): Remedy[] {
  return [
    {
      says: `a strip of ${needed} sockets in place of ${id}`,
      edits: [setStrip(id, { ...power.strips[id]!, sockets: needed })],
    },
  ];
}

/** A strip that bears what its breaker lets through. */
export function strongerStrip({ power }: Cabinet, id: string): Remedy[] {
  const { circuit, strips } = power;
  return [
    { says: `a strip for ${circuit} A in place of ${id}`, edits: [setStrip(id, { ...strips[id]!, rating: circuit })] },
  ];
}

export function stripToWall({ power }: Cabinet, id: string): Remedy[] {
  return [
    { says: `plug ${id} into a wall socket of its own`, edits: [setStrip(id, { ...power.strips[id]!, from: WALL })] },
  ];
}

export function stripOutside({ power }: Cabinet, id: string): Remedy[] {
  return [{ says: `put ${id} outside the cabinet`, edits: [setStrip(id, { ...power.strips[id]!, where: OUTSIDE })] }];
}

/** Every second user onto a new strip in a wall socket of its own. */
export function twoStrips({ power }: Cabinet, id: string): Remedy[] {
  const strip = power.strips[id]!;
  if (strip.feeds.length < 2) return [];
  const name = power.strips['second-strip'] === undefined ? 'second-strip' : 'one-more-strip';
  const [stay, move] = [0, 1].map((odd) => strip.feeds.filter((_, at) => at % 2 === odd));
  return [
    {
      says: `a second strip in a wall socket of its own, for ${move!.join(' and ')}`,
      edits: [
        setStrip(id, { ...strip, feeds: stay! }),
        setStrip(name, { ...strip, sockets: 0, from: WALL, feeds: move! }),
      ],
    },
  ];
}

export function largerSupply({ power }: Cabinet, id: string): Remedy[] {
  const { watts, where } = power.supplies[id]!;
  const next = SUPPLY_SIZES.find((size) => size > watts * 1.01);
  return [
    ...(where === OUTSIDE
      ? []
      : [{ says: `put ${id} outside the cabinet`, edits: [set(['supplies', id, 'where'], OUTSIDE)] }]),
    ...(next === undefined
      ? []
      : [{ says: `a supply of ${next} W for ${id}`, edits: [set(['supplies', id, 'power'], `${next} W`)] }]),
  ];
}

/** The next two sections that are sold. */
export function thickerWire({ power }: Cabinet, id: string): Remedy[] {
  const { section } = power.wires[id]!;
  return SECTIONS.filter((one) => one > section * 1.01)
    .slice(0, 2)
    .map((one) => {
      const text = `${Number((one * 1e6).toFixed(2))} mm2`;
      return { says: `${text} for ${id}`, edits: [set(['wires', id, 'section'], text)] };
    });
}

/** About twice the load, so that starting motors do not blow it, where the wire bears that; else what just bears the load for long. */
export function fuseFor({ power }: Cabinet, id: string, current: number, carries: number): Remedy[] {
  const bears = FUSES.filter((one) => current <= 0.8 * one && one <= carries);
  const fuse = bears.findLast((one) => one <= Math.max(1, 2 * current)) ?? bears[0];
  if (fuse === undefined || fuse === power.wires[id]!.fuse) return thickerWire({ power } as Cabinet, id);
  return [{ says: `a fuse of ${fuse} A for ${id}`, edits: [set(['wires', id, 'fuse'], `${fuse} A`)] }];
}

export function fuseNear(id: string): Remedy[] {
  return [{ says: `put the fuse of ${id} at the supply`, edits: [set(['wires', id, 'fuse-at'], '150 mm')] }];
}
