// What is assumed about electricity and filament where a file says nothing; part of the one table in `defaults.ts`.

import { type Assumption, decades, normal } from './assumption.ts';

export type PowerDefaultName =
  | 'powerFactor'
  | 'inrush'
  | 'earthLeakage'
  | 'adapterInrush'
  | 'adapterLeakage'
  | 'supplyEfficiency'
  | 'tariff'
  | 'wireLength'
  | 'pathBends'
  | 'tubeFriction'
  | 'printedFriction'
  | 'bendRadius'
  | 'unwinding'
  | 'drivePush'
  | 'driveGap';

const MEMORY = 'common practice, from memory';
const KWH = 3.6e6;

export const powerDefaults: Readonly<Record<PowerDefaultName, Assumption>> = {
  powerFactor: normal(
    0.65,
    0.58,
    0.95,
    'a switched supply without correction 0.55 to 0.65, with it 0.9 or more; from memory',
  ),
  inrush: decades(40, 25, 60, 'cold start at 230 V, as sheets of 200 to 400 W supplies print it; from memory'),
  earthLeakage: decades(0.0006, 0.0003, 0.001, 'capacitors to earth of one switched supply; from memory'),
  adapterInrush: decades(15, 8, 30, 'cold start of an adapter below 100 W; from memory'),
  adapterLeakage: decades(0.0002, 0.0001, 0.0004, 'an adapter without an earth pin; from memory'),
  supplyEfficiency: normal(0.86, 0.82, 0.9, 'common 24 V supplies 82 to 88 %, good ones 90 to 94 %; from memory'),
  tariff: normal(0.3 / KWH, 0.15 / KWH, 0.45 / KWH, 'what households pay for a kilowatt-hour; invented, typical'),
  wireLength: decades(2, 1, 4, 'from a supply to what it feeds, one way'),
  /** rad */
  pathBends: decades(Math.PI, Math.PI / 2, 2 * Math.PI, 'half a turn in all between spool and drive'),
  tubeFriction: normal(0.15, 0.1, 0.2, `filament in a clean fluoropolymer tube; dust doubles it; ${MEMORY}`),
  printedFriction: normal(0.32, 0.25, 0.4, `filament on printed guides; dust doubles it; ${MEMORY}`),
  bendRadius: decades(0.06, 0.045, 0.1, `a guide tube that nobody forced; ${MEMORY}`),
  unwinding: decades(0.3, 0.1, 0.8, 'springy windings and side friction of a spool that turns freely; own estimate'),
  drivePush: decades(20, 10, 40, 'what an ordinary nozzle asks for at ordinary speed; own estimate'),
  driveGap: decades(0.002, 0.001, 0.004, `open length between wheels and guide; ${MEMORY}`),
};
