// Every limit that the fire trade holds against a cabinet, and the cautions that go with its numbers. None of them makes a fire
// harmless: they say what must be there so that one is noticed, not fed, and cut off.

import { CLASS_A_PRACTICE, heatDetectors } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { HeatClass } from '../../cabinet/protection.ts';
import type { Limit, Step } from '../measure.ts';
import { limitFor, tradeLimit } from '../person-limit.ts';

const CELSIUS = 273.15;

export const chainLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'chain-states',
    'at-most',
    1,
    'de-energise to trip: only the state in which every member is well leaves the load on (idea of IEC 60204-1 and ISO 13849, from memory)',
  );

export const overheatLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'overheat-devices',
    'at-least',
    1,
    'a cut-off that works with every processor dead, as a transistor that fails closed heats on whatever software says; common practice',
  );

export const restartLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'restart',
    'at-most',
    0,
    'no machine starts by itself when the power comes back (idea of IEC 60204-1, from memory)',
  );

export const leftRunningLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'left-running',
    'at-most',
    0,
    'fans stop, heaters are cut and flaps shut on alarm, unless a code official designed otherwise; common practice',
  );

export const bayAlarmLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'smoke-in-bay',
    'at-least',
    1,
    'a smoke detector at the highest point of each bay or in its exhaust before the filter: smoke does not cross tight shelves; common practice',
  );

export const roomAlarmLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'smoke-in-room',
    'at-least',
    1,
    'a smoke alarm in the room, never the one in the bay alone; common practice, domestic alarms EN 14604 or UL 217',
  );

export const afterFilterLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'smoke-after-filter',
    'at-most',
    0,
    'a filter takes out the smoke before the detector; common practice',
  );

export const rateOfRiseLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'rate-of-rise-at-bed',
    'at-most',
    0,
    'a detector that answers to a fast rise alarms whenever a bed heats up; EN 54-5, and common practice',
  );

/** Air at a heat detector at any moment: what its class bears at most. */
export const detectorPeakLimit = (cabinet: Cabinet, heatClass: HeatClass): Limit =>
  tradeLimit(
    cabinet,
    'heat-detector-peak',
    'at-most',
    CELSIUS + heatDetectors[heatClass].highest,
    `EN 54-5, highest application temperature of class ${heatClass}, second-hand`,
  );

/** Air at a heat detector over the warmest four hours. */
export const detectorLongLimit = (cabinet: Cabinet, heatClass: HeatClass, value: number): Limit =>
  tradeLimit(
    cabinet,
    'heat-detector-long',
    'at-most',
    CELSIUS + value,
    heatClass === 'A1' || heatClass === 'A2'
      ? `class A is hung in air of up to ${CLASS_A_PRACTICE} °C; common practice (its typical temperature in EN 54-5 is 25 °C)`
      : `EN 54-5, typical application temperature of class ${heatClass}, second-hand`,
  );

export const linkLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'link-margin',
    'at-least',
    10,
    'a thermal link holds 10 K above the hottest place where it sits; common practice, links to IEC 60691',
  );

export const thermostatLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'thermostat-margin',
    'at-least',
    5,
    'a thermostat that cuts off opens 5 K above the hottest air of an ordinary day, or it trips without need; own judgement',
  );

export const storedLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'stored-fuel',
    'at-most',
    0,
    'spare spools, paper and cardboard are kept outside the bays; common practice',
  );

export const vapourLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'stored-vapour',
    'at-most',
    0,
    'no aerosol, solvent or wipes in a bay, ever: their vapour flashes at the first spark; common practice',
  );

export const agentLimit = (cabinet: Cabinet): Limit =>
  tradeLimit(
    cabinet,
    'extinguisher-agent',
    'at-least',
    1,
    'carbon dioxide, a clean agent or powder for electrical equipment; water only as its own label allows (EN 3-7, from memory). Isolate first',
  );

export const gasLimit = (cabinet: Cabinet): Limit =>
  limitFor(cabinet, {
    id: 'extinguisher-gas',
    kind: 'at-most',
    value: 0.03,
    source:
      'carbon dioxide, short-term exposure limit of 30 000 ppm over 15 minutes (ACGIH), from memory; above 5 % people lose judgement',
    standing: 'occupational',
  });

/** Goes with the numbers of each question: what they are, and whom to ask. */
export const cautions = {
  fire: 'an order of magnitude; no substitute for the local fire code (NFPA 1, IFC), your insurer and your landlord, who decide',
  chain:
    'mains work belongs to a qualified electrician; the local code decides (NFPA 70, IEC 60364, BS 7671, VDE 0100; EN 60204-1, ISO 13849)',
  detection:
    'no substitute for NFPA 72, EN 54 and EN 14604; test every device monthly, replace domestic alarms after ten years',
  smoke:
    'smoke is toxic: at any burnt smell leave, shut the room and call for help; do not open a cabinet that smokes, as it may flare up',
} as const;

export const caution = (which: keyof typeof cautions): Step => ({ text: cautions[which] });
