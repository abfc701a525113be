// Every limit of the power trade: value, over what it is taken, where it comes from. Which rules count depends on the region.

import { continuousCurrent, leakageBudget, magneticBand } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Strip } from '../../cabinet/power.ts';
import type { Limit } from '../measure.ts';
import { limitFor } from '../person-limit.ts';

/** Said with every finding that touches the mains. */
export const CAUTION =
  'these are sums, not an inspection: mains work belongs to a qualified electrician, and the local code decides';

/** Where what a wire may carry is printed, by section and by gauge. Both for air of 30 °C. */
export const CORD_TABLE = 'IEC 60335-1:2010 table 11, from memory';
export const GAUGE_TABLE =
  'NEC table 400.5(A), so numbered to the edition of 2008 and 400.5(A)(1) from 2011 on (memory); values as an appliance guide prints them without an edition, second-hand';
/** The law by which warm air takes from it. */
export const AMBIENT_LAW = 'IEC 60364-5-52:2009 table B.52.14, printed tables second-hand';
/** Resistance of flexible wire. */
export const FLEXIBLE_TABLE = 'IEC 60228:2004 table 3, class 5, second-hand';

/** Hours over which a load counts as long, s: NEC article 100 (three hours); contacts age in hours as well. */
export const LONG: number = 3 * 3600;
/** Long-run current of a strip's contacts, A. */
const LONG_STRIP = 10;
/** Warmest air of household sockets and plugs, K. */
const SOCKET_AIR = 273.15 + 40;
/** Below it a circuit of low voltage counts as 12 V, V. */
const TWENTY_FOUR = 18;
/** Trip-free current of a Class A device of the USA, A. */
const CLASS_A = 0.004;

export function circuitLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'circuit-current',
    kind: 'at-most',
    value: cabinet.power.circuit,
    source: 'rating of the circuit’s breaker: I_b ≤ I_n (IEC 60364-4-43, 433.1, second-hand), any moment',
    standing: 'trade',
  });
}

/** Only where the National Electrical Code rules: elsewhere no such rule exists. */
export function continuousLimit(cabinet: Cabinet): Limit | undefined {
  const { region, circuit } = cabinet.power;
  if (region !== 'US') return undefined;
  return limitFor(cabinet, {
    id: 'circuit-continuous',
    kind: 'at-most',
    value: continuousCurrent(circuit),
    source:
      'NEC 210.19(A), 210.20(A), second-hand: 125 % of what is on for 3 h or more, so 80 % of the breaker for that part',
    standing: 'trade',
  });
}

export function stripLimit(cabinet: Cabinet, { rating }: Strip): Limit {
  return limitFor(cabinet, {
    id: 'strip-current',
    kind: 'at-most',
    value: Math.min(rating, cabinet.power.circuit),
    source: 'what is printed on the strip, and not more than its circuit, any moment',
    standing: 'trade',
  });
}

/**
 * The breaker before a strip, which alone cuts it off; none where a strip has a cut-off of its own: the fuse in the plug of the
 * UK (BS 1363), the overcurrent protection of a listed power tap of the USA (UL 1363), both from memory.
 */
export function stripBreakerLimit(cabinet: Cabinet, { rating }: Strip): Limit | undefined {
  const { region } = cabinet.power;
  if (region === 'UK' || region === 'US') return undefined;
  return limitFor(cabinet, {
    id: 'strip-breaker',
    kind: 'at-most',
    value: rating,
    source:
      'common practice, no source: the breaker is not rated above what is printed on the strip, or the strip may overheat before it trips. IEC 60364-4-43 leaves cords in sockets out (second-hand)',
    standing: 'trade',
  });
}

/** What a strip may carry for hours. */
export function stripLongLimit(cabinet: Cabinet, { rating }: Strip): Limit | undefined {
  const { region } = cabinet.power;
  const [value, source] =
    region === 'US'
      ? [
          continuousCurrent(rating),
          'NEC table 210.21(B)(2), second-hand: 12 A on a receptacle of 15 A, 16 A on one of 20 A',
        ]
      : region === 'UK'
        ? [rating, 'fuse in the plug, BS 1363 (from memory)']
        : [
            Math.min(rating, LONG_STRIP),
            'common practice, no source: contacts of plugs age at hours of 16 A; IEC has no rule of 80 %',
          ];
  return limitFor(cabinet, {
    id: 'strip-long',
    kind: 'at-most',
    value,
    source: `${source}; mean of any 3 h`,
    standing: 'trade',
  });
}

export function stripAirLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'strip-air',
    kind: 'at-most',
    value: SOCKET_AIR,
    source: 'IEC 60884-1 (from memory): plugs and sockets are for air up to 40 °C, any moment',
    standing: 'trade',
  });
}

export function startLimit(cabinet: Cabinet): Limit {
  return { ...circuitLimit(cabinet), id: 'start-current', ...own(cabinet, 'start-current') };
}

/** Peak that trips the breaker at once, A, by its magnet; breakers of the USA have no such curves. */
export function trippingPeak({ power }: Cabinet): number | undefined {
  // The band is of effective values of a sine; a supply's inrush is told as its peak.
  return power.region === 'US' ? undefined : Math.SQRT2 * power.magnet * power.circuit;
}

export function inrushLimit(cabinet: Cabinet): Limit | undefined {
  const { region, circuit, breaker } = cabinet.power;
  if (region === 'US') return undefined;
  const { from, to } = magneticBand(circuit, breaker);
  const peak = (effective: number): number => Math.round(Math.SQRT2 * effective);
  return limitFor(cabinet, {
    id: 'inrush',
    kind: 'at-most',
    value: 1,
    source: `IEC 60898-1, from memory: ${breaker}${circuit} may trip at once from a peak of ${peak(from)} A on and must above ${peak(to)} A`,
    standing: 'trade',
  });
}

export function leakageLimit(cabinet: Cabinet): Limit | undefined {
  const { region, rcd } = cabinet.power;
  if (rcd === 0) return undefined;
  const american = region === 'US' && rcd < 0.01;
  return limitFor(cabinet, {
    id: 'earth-leakage',
    kind: 'at-most',
    value: american ? CLASS_A : leakageBudget(rcd),
    source: american
      ? 'UL 943, second-hand: a Class A device does not trip below 4 mA and must from 6 mA on'
      : 'IEC 60364-5-53, from memory: standing leakage at most 30 % of the trip current',
    standing: 'trade',
  });
}

export function socketLimit(cabinet: Cabinet, { sockets }: Strip): Limit | undefined {
  if (sockets === 0) return undefined;
  return limitFor(cabinet, {
    id: 'sockets',
    kind: 'at-most',
    value: sockets,
    source: 'sockets of the strip; a bulky plug counts twice (common practice, no source)',
    standing: 'trade',
  });
}

export function chainLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'plug-chain',
    kind: 'at-most',
    value: 1,
    source:
      '29 CFR 1910.303(b)(2) with UL 1363, second-hand, and what is printed on strips elsewhere: into a wall socket, not into another strip',
    standing: 'trade',
  });
}

export function dropLimit(cabinet: Cabinet, voltage: number): Limit {
  return limitFor(cabinet, {
    id: 'wire-drop',
    kind: 'at-most',
    value: voltage >= TWENTY_FOUR ? 0.03 : 0.05,
    source: 'common practice, no source: 3 % at 24 V, 5 % at 12 V; light strips dim visibly from 5 to 10 % on',
    standing: 'trade',
  });
}

export function fuseCurrentLimit(cabinet: Cabinet, carries: number, table: string): Limit {
  return limitFor(cabinet, {
    id: 'fuse-current',
    kind: 'at-most',
    value: carries,
    source: `I_n ≤ I_z (IEC 60364-4-43, 433.1, second-hand) with ${table}; less what warm air takes`,
    standing: 'trade',
  });
}

export function fuseShareLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'fuse-share',
    kind: 'at-most',
    value: 0.8,
    source: 'common practice, no source: a fuse carries at most 75 to 80 % of its rating for long',
    standing: 'trade',
  });
}

export function fusePlaceLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'fuse-place',
    kind: 'at-most',
    value: 0.3,
    source: 'common practice, no source: within 150 to 300 mm of the supply, so that the whole wire is behind it',
    standing: 'trade',
  });
}

export function supplyLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'supply-share',
    kind: 'at-most',
    value: 1,
    source: 'rated output, less what warm air takes: common form of data sheets, from memory; its own sheet rules',
    standing: 'trade',
  });
}

function own({ limits }: Cabinet, id: string): Partial<Limit> {
  const value = limits[id];
  return value === undefined ? {} : { value, standing: 'own', source: `limits.${id} of the cabinet file` };
}
