// The smallest inside that would do for all machines in full motion, and what of it each candidate carcass has.

import type { Bay, Cabinet } from '../../cabinet/cabinet.ts';
import type { Carcass } from '../../cabinet/costs.ts';
import { machineParts, type Side } from '../machine-solids.ts';
import type { Measure, Step } from '../measure.ts';
import { machinesIn } from '../plant.ts';
import { millimetres } from '../remedy-edits.ts';
import { clearBay, wanted } from '../standing-machines.ts';
import { wayOut } from './limits.ts';
import { rigidOf } from './way-out.ts';

interface Needed {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

/** What the machines of a bay want, their air included; an empty bay is wanted as it is. */
function neededBay(cabinet: Cabinet, bay: string): Needed {
  const { x, z } = cabinet.bays[bay]!;
  const machines = machinesIn(cabinet, bay).map((id) => machineParts(cabinet, id));
  if (machines.length === 0) return { width: x[1] - x[0], depth: 0, height: z[1] - z[0] };
  const want = (side: Side): number[] => machines.map((parts) => wanted(cabinet, parts, side));
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  return {
    width: sum(want('left')) + sum(want('right')),
    depth:
      Math.max(...want('front').map((front, index) => front + want('back')[index]!)) + clearBay(cabinet, bay).front,
    height: Math.max(...want('top')),
  };
}

/** The whole inside, bays in the order in which they stand: the longest chain of bays with the boards between them. */
export function neededInside(cabinet: Cabinet): Needed & { readonly bays: Readonly<Record<string, Needed>> } {
  const bays = Object.fromEntries(Object.keys(cabinet.bays).map((id) => [id, neededBay(cabinet, id)]));
  const chain = (axis: 'x' | 'z', size: (needed: Needed) => number): number => {
    const ordered = Object.entries(cabinet.bays).sort(([, a], [, b]) => a[axis][0] - b[axis][0]);
    const ends = new Map<string, number>();
    for (const [id, bay] of ordered) {
      let start = 0;
      for (const [before, end] of ends) {
        const gap = beyond(cabinet.bays[before]!, bay, axis);
        if (gap !== undefined) start = Math.max(start, end + gap);
      }
      ends.set(id, start + size(bays[id]!));
    }
    return Math.max(...ends.values());
  };
  return {
    bays,
    width: chain('x', ({ width }) => width),
    depth: Math.max(...Object.values(bays).map(({ depth }) => depth)),
    height: chain('z', ({ height }) => height),
  };
}

/** Board between a bay and one that follows it along an axis, when they share the other axis. */
function beyond(before: Bay, after: Bay, axis: 'x' | 'z'): number | undefined {
  const other = axis === 'x' ? 'z' : 'x';
  const gap = after[axis][0] - before[axis][1];
  const shared = Math.min(before[other][1], after[other][1]) - Math.max(before[other][0], after[other][0]);
  return gap >= -1e-6 && gap < 0.08 && shared > 0 ? Math.max(gap, 0) : undefined;
}

const axes = ['width', 'depth', 'height'] as const;

export function needs(cabinet: Cabinet): Measure[] {
  if (Object.keys(cabinet.machines).length === 0) return [];
  const needed = neededInside(cabinet);
  return [
    ...axes.map(
      (axis): Measure => ({
        trade: 'fit',
        quantity: `inside-${axis}`,
        part: 'cabinet',
        title: `smallest inside ${axis} for all machines in full motion`,
        value: needed[axis],
        unit: 'length',
        better: 'lower',
        get steps(): readonly Step[] {
          return [
            ...Object.entries(needed.bays).map(([bay, its]) => ({
              text: `bay ${bay} wants`,
              value: its[axis],
              unit: 'length',
              inputs: machinesIn(cabinet, bay).map((id) => `fit.machines.${id}.frame`),
            })),
            { text: 'the cabinet has', value: cabinet.inside[axis], unit: 'length', inputs: ['inside'] },
          ];
        },
        remedies: [],
        weight: 0.3,
      }),
    ),
    ...Object.entries(cabinet.carcasses).map(([id, carcass]) => candidate(cabinet, id, carcass, needed)),
  ];
}

/** A carcass that is thought of: its tightest measure, and what must change. Without a limit: that it does not do is no fault of this cabinet. */
function candidate(cabinet: Cabinet, id: string, carcass: Carcass, needed: Needed): Measure {
  const { tolerance } = cabinet.fit;
  const rigid = Object.keys(cabinet.machines).map((machine) => rigidOf(cabinet, machine));
  const air = wayOut(cabinet).value;
  const spares = [
    ...axes.map((axis) => ({
      what: `inside ${axis}`,
      wants: needed[axis],
      has: carcass.inside[axis],
      spare: carcass.inside[axis] - tolerance - needed[axis],
    })),
    ...[
      [
        'opening width',
        carcass.opening[0],
        Math.max(...rigid.map(({ width, depth }) => Math.min(width, depth))),
      ] as const,
      ['opening height', carcass.opening[1], Math.max(...rigid.map(({ height }) => height))] as const,
    ].map(([what, has, wants]) => ({ what, wants: wants + air, has, spare: has - wants - air })),
  ];
  const tightest = spares.reduce((a, b) => (b.spare < a.spare ? b : a));
  return {
    trade: 'fit',
    quantity: 'carcass-fit',
    part: id,
    title: `room to spare in ${carcass.title}; below 0 it does not do`,
    value: tightest.spare,
    unit: 'length',
    better: 'higher',
    get steps(): readonly Step[] {
      const { price, changes } = carcass;
      const amount = ({ low, high }: { low: number; high: number }): string =>
        `${low === high ? low : `${low} to ${high}`} ${cabinet.currency}`;
      return [
        ...spares.map(({ what, wants, has, spare }) => ({
          text: `${what}: wants ${millimetres(wants)}, has ${millimetres(has)}${spare < 0 ? `, ${millimetres(-spare)} too little` : ''}`,
          value: spare,
          unit: 'length',
        })),
        {
          text: `${carcass.from === 'bought' ? 'bought' : 'built'}${price === undefined ? '; its price is told by cost' : ` for ${amount(price)}`}`,
        },
        ...Object.entries(changes).map(([what, its]) => ({ text: `and ${what} for ${amount(its)}` })),
      ];
    },
    remedies: [],
    weight: 0.2,
  };
}
