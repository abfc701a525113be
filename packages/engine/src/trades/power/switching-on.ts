// Switching on: the first half cycle against the breaker's magnet, and what leaks to earth against the earth-fault device.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { CAUTION, inrushLimit, leakageLimit, trippingPeak } from './limits.ts';
import { oneByOne } from './remedies.ts';

export function switchingOn(cabinet: Cabinet): Measure[] {
  return [...inrush(cabinet), ...leakage(cabinet)];
}

interface Meets {
  readonly id: string;
  readonly inrush: number;
  readonly leakage: number;
  readonly path: string;
}

/** Everything with a supply of its own. */
function suppliesOf({ machines, power }: Cabinet): Meets[] {
  return [
    ...Object.entries(machines).map(([id, { mains }]) => ({ id, ...mains, path: `machines.${id}.mains` })),
    ...Object.entries(power.supplies).map(([id, mains]) => ({ ...mains, id, path: `power.supplies.${id}` })),
  ];
}

function inrush(cabinet: Cabinet): Measure[] {
  const { switched, circuit, breaker } = cabinet.power;
  const all = suppliesOf(cabinet);
  if (all.length === 0) return [];
  const together = all.reduce((sum, one) => sum + one.inrush, 0);
  const most = Math.max(...all.map((one) => one.inrush));
  const limit = inrushLimit(cabinet);
  const peak = switched === 'together' ? together : most;
  const trips = trippingPeak(cabinet);
  return [
    {
      trade: 'power',
      quantity: 'inrush',
      part: 'circuit',
      ...(trips === undefined
        ? { title: 'peak current at switching on', value: peak, unit: 'electric-current' }
        : {
            title: 'peak at switching on, against what trips the breaker at once',
            value: peak / trips,
            unit: 'share',
          }),
      ...(limit === undefined ? {} : { limit }),
      get steps(): readonly Step[] {
        return [
          ...all.map((one) => ({
            text: `${one.id}, from cold`,
            value: one.inrush,
            unit: 'electric-current',
            inputs: [`${one.path}.inrush`],
          })),
          { text: 'all together', value: together, unit: 'electric-current', inputs: ['power.switched'] },
          { text: 'a few tenths of a second apart: the largest alone', value: most, unit: 'electric-current' },
          ...(trips === undefined
            ? [{ text: 'breakers of the USA have no such curves: ask what yours bears' }]
            : [
                {
                  text: `peak at which ${breaker}${circuit} trips at once, middle of its band`,
                  value: trips,
                  unit: 'electric-current',
                  source: 'IEC 60898-1, from memory',
                  inputs: ['power.magnet', 'power.circuit', 'power.breaker'],
                },
              ]),
          {
            text: 'peaks shorter than a half cycle often pass, and cold peaks of several supplies do not all meet: this is the worst case',
          },
          { text: CAUTION },
        ];
      },
      get remedies() {
        return switched === 'together' ? oneByOne() : [];
      },
      cause: causes.allAtOnce,
      weight: 0.3,
      better: 'lower',
    },
  ];
}

function leakage(cabinet: Cabinet): Measure[] {
  const all = suppliesOf(cabinet);
  if (all.length === 0) return [];
  const value = all.reduce((sum, one) => sum + one.leakage, 0);
  const limit = leakageLimit(cabinet);
  const { rcd } = cabinet.power;
  return [
    {
      trade: 'power',
      quantity: 'earth-leakage',
      part: 'circuit',
      title: 'standing current to earth',
      value,
      unit: 'electric-current',
      ...(limit === undefined ? {} : { limit }),
      get steps(): readonly Step[] {
        return [
          ...all.map((one) => ({
            text: one.id,
            value: one.leakage,
            unit: 'electric-current',
            inputs: [`${one.path}.leakage`],
          })),
          rcd === 0
            ? {
                text: 'no earth-fault device is given: whether there is one, and must be, the local code says',
                inputs: ['power.rcd'],
              }
            : {
                text: 'trip current of the earth-fault device',
                value: rcd,
                unit: 'electric-current',
                inputs: ['power.rcd'],
              },
          { text: 'it watches the mains only: a short or an arc on the low-voltage side it does not see' },
          { text: CAUTION },
        ];
      },
      remedies: [],
      weight: 0.4,
      better: 'lower',
    },
  ];
}
