// What holds the filament back on its way from the spool to the drive: steadily, and when the spool must be set turning.

import { pullAfterBends, spoolDrag, spoolStart } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Holder, SpoolPart } from '../../cabinet/filament.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { pullLimit, startLimit } from './limits.ts';
import { easierPath } from './remedies.ts';

/** Radius of the hub that the last windings lie on, over the spool's, and of its hole, m: usual spools, common practice. */
const HUB_SHARE = 0.45;
const HOLE = 0.026;
/** Bearing 608 of ISO 15: bore 8 mm. Coefficient of friction of a deep-groove ball bearing: 0.0015, from memory. */
const BEARING = { friction: 0.0015, contact: 0.004 };
/** Plastic on a plain rod 0.2 to 0.45; rollers under the rim 0.005 to 0.02, own estimate. */
const ROD = { friction: 0.3, contact: HOLE };
const ROLLERS_FRICTION = 0.01;
/** Filament brought to 50 mm/s in 50 ms, m/s²: an ordinary take-up after a retraction. */
const TAKE_UP = 1;

export function pull(cabinet: Cabinet): Measure[] {
  return Object.keys(cabinet.spools).flatMap((id) => pullsOf(cabinet, id));
}

function holding(holder: Holder, radius: number): { readonly friction: number; readonly contact: number } {
  if (holder === 'rollers') return { friction: ROLLERS_FRICTION, contact: radius };
  return holder === 'bearing' ? BEARING : ROD;
}

/** Drag of the spool at its worst: full and wound high, or nearly empty and wound low. */
export function worstDrag({ mass, empty, diameter, holder }: SpoolPart): number {
  const { friction, contact } = holding(holder, diameter / 2);
  return Math.max(
    spoolDrag(mass + empty, friction, contact, diameter / 2),
    spoolDrag(empty, friction, contact, (HUB_SHARE * diameter) / 2),
  );
}

function pullsOf(cabinet: Cabinet, id: string): Measure[] {
  const spool = cabinet.spools[id]!;
  const machine = cabinet.machines[spool.machine];
  if (machine === undefined) return [];
  const { path, holder, mass, empty, diameter } = spool;
  const drag = worstDrag(spool);
  const start = spoolStart(mass + empty, diameter / 2, HOLE, diameter / 2, TAKE_UP);
  const at = `spools.${id}`;
  const bends: Step = {
    text: `factor of the bends, ${path.guide === 'open' ? 'which touch nothing' : `on ${path.guide === 'tube' ? 'a tube' : 'printed guides'}; dust doubles its friction`}`,
    value: pullAfterBends(1, path.friction, path.bends),
    unit: 'number',
    formula: 'exp(μ θ)',
    source: 'Euler 1762, Eytelwein 1808',
    inputs: [`${at}.path.bends`, `${at}.path.friction`],
  };
  const steady: readonly Step[] = [
    {
      text: 'springy windings of a spool that turns freely',
      value: path.unwinding,
      unit: 'force',
      inputs: [`${at}.path.unwinding`],
    },
    {
      text:
        holder === 'bearing'
          ? 'drag of its ball bearings'
          : `drag on its ${holder === 'rod' ? 'plain rod' : 'rollers'}, at its worst winding`,
      value: drag,
      unit: 'force',
      formula: 'μ m g r/R',
      source: 'balance of moments',
      inputs: [`${at}.holder`, `${at}.mass`],
    },
  ];
  const about = {
    trade: 'filament',
    part: id,
    unit: 'force',
    logarithmic: true,
    better: 'lower' as const,
    cause: causes.spoolDrags,
  };
  return [
    {
      ...about,
      quantity: 'filament-pull',
      title: 'pull before the drive, steady',
      value: pullAfterBends(path.unwinding + drag, path.friction, path.bends),
      limit: pullLimit(cabinet, machine),
      get steps() {
        return [...steady, bends];
      },
      get remedies() {
        return easierPath(cabinet, id);
      },
      weight: 0.5,
    },
    {
      ...about,
      quantity: 'filament-start',
      title: 'pull before the drive when the spool must start',
      value: pullAfterBends(path.unwinding + drag + start, path.friction, path.bends),
      limit: startLimit(cabinet, machine),
      get steps(): readonly Step[] {
        return [
          ...steady,
          {
            text: 'setting the full spool turning, 50 mm/s within 50 ms; slack makes it less',
            value: start,
            unit: 'force',
            formula: 'm (R² + r²) a/(2 R²)',
            source: 'moment of inertia of a hollow cylinder',
            inputs: [`${at}.mass`],
          },
          bends,
        ];
      },
      get remedies() {
        return easierPath(cabinet, id);
      },
      weight: 0.4,
    },
  ];
}
