// The low-voltage side: supplies where they stand, wires with their drop, and fuses that must protect them.

import {
  ambientFactor,
  copperFactor,
  cordCurrent,
  flexibleResistance,
  gaugeCurrent,
  supplyLoss,
  supplyShare,
  voltageDrop,
} from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Insulation, Wire } from '../../cabinet/power.ts';
import { causes } from '../causes.ts';
import { largest } from '../course.ts';
import { lowVoltagePower, outputOf, sumOf, warmestAt } from '../draws.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import {
  AMBIENT_LAW,
  CORD_TABLE,
  dropLimit,
  FLEXIBLE_TABLE,
  fuseCurrentLimit,
  fusePlaceLimit,
  fuseShareLimit,
  GAUGE_TABLE,
  supplyLimit,
} from './limits.ts';
import { fuseFor, fuseNear, largerSupply, SECTIONS, thickerWire } from './remedies.ts';

/** Warmest that insulation bears for long, K: marked on the wire, from memory. */
const BEARS: Readonly<Record<Insulation, number>> = { rubber: 333.15, PVC: 343.15, XLPE: 363.15, silicone: 453.15 };
/** Air in which a supply still gives all, K, and the share it loses for each kelvin above: data sheets, from memory. */
const FULL = 273.15 + 45;
const SLOPE = 0.025;
/** Hotter still, a supply has switched itself off: what it gives is taken as next to nothing, so that the share stays a number. */
const LEAST_SHARE = 0.01;
const TABLE_AIR = 303.15;
/** Length taken for a supply whose wires the file does not name, m. */
const USUAL_LENGTH = 3;

export function lowVoltage(run: DayRun): Measure[] {
  const { supplies, wires } = run.cabinet.power;
  const wired = new Set(Object.values(wires).map(({ supply }) => supply));
  return [
    ...Object.keys(supplies).flatMap((id) => [
      supplyOf(run, id),
      ...(wired.has(id) || supplies[id]!.feeds.length === 0 ? [] : [sectionFor(run, id)]),
    ]),
    ...Object.keys(wires).flatMap((id) => wireOf(run, id)),
  ];
}

function supplyOf(run: DayRun, id: string): Measure {
  const { cabinet } = run;
  const { watts, where, efficiency } = cabinet.power.supplies[id]!;
  const load = largest(outputOf(run, id)).value;
  const air = warmestAt(run, where);
  const share = supplyShare(air, FULL, SLOPE);
  return {
    trade: 'power',
    quantity: 'supply-share',
    part: `supplies.${id}`,
    title: 'largest load of the supply against what it gives there',
    value: load / (watts * Math.max(share, LEAST_SHARE)),
    unit: 'share',
    limit: supplyLimit(cabinet),
    get steps(): readonly Step[] {
      return [
        {
          text: 'what it feeds, all on that is ever on together',
          value: load,
          unit: 'power',
          inputs: [`power.supplies.${id}.feeds`],
        },
        { text: 'rated output', value: watts, unit: 'power', inputs: [`power.supplies.${id}.watts`] },
        {
          text: 'hottest air where it stands',
          value: air,
          unit: 'temperature',
          inputs: [`power.supplies.${id}.where`],
        },
        {
          text: 'share of its output that such air leaves',
          value: share,
          unit: 'share',
          formula: '1 − 2.5 % for each kelvin above 45 °C',
          source: 'common form of data sheets, from memory',
        },
        {
          text:
            cabinet.bays[where] === undefined
              ? 'its own heat, which stays outside'
              : `its own heat, which ${where} gets (the simulated day leaves it out)`,
          value: supplyLoss(load, efficiency, 0),
          unit: 'power',
          formula: 'P_out (1/η − 1)',
          inputs: [`power.supplies.${id}.efficiency`],
        },
      ];
    },
    get remedies() {
      return largerSupply(cabinet, id);
    },
    cause: causes.smallSupply,
    weight: 0.5,
    better: 'lower',
  };
}

/** Nothing is said of its wires: the section that would do. */
function sectionFor(run: DayRun, id: string): Measure {
  const { cabinet } = run;
  const { voltage } = cabinet.power.supplies[id]!;
  const current = largest(outputOf(run, id)).value / voltage;
  const limit = dropLimit(cabinet, voltage);
  const air = Math.max(...Object.keys(cabinet.bays).map((bay) => warmestAt(run, bay)));
  const dropOf = (section: number): number =>
    voltageDrop(current, USUAL_LENGTH, flexibleResistance(section, air)) / voltage;
  const carriesOf = (section: number): number => cordCurrent(section) * ambientFactor(BEARS.PVC, air);
  const value =
    SECTIONS.find((section) => dropOf(section) <= limit.value && carriesOf(section) >= current / 0.8) ??
    SECTIONS.at(-1)!;
  return {
    trade: 'power',
    quantity: 'wire-section',
    part: `supplies.${id}`,
    title: 'cross-section that its wires need',
    value,
    unit: 'area',
    get steps(): readonly Step[] {
      return [
        { text: 'largest current', value: current, unit: 'electric-current' },
        { text: 'length taken, one way, all of it through one pair', value: USUAL_LENGTH, unit: 'length' },
        { text: 'hottest air of all bays', value: air, unit: 'temperature' },
        {
          text: 'share of the voltage lost in that section',
          value: dropOf(value),
          unit: 'share',
          formula: '2 L I r/V',
          source: FLEXIBLE_TABLE,
        },
        {
          text: 'current that PVC of that section may carry there',
          value: carriesOf(value),
          unit: 'electric-current',
          formula: 'table value · √((70 °C − T)/40 K)',
          source: `${CORD_TABLE}; ${AMBIENT_LAW}`,
        },
        {
          text: 'a fuse at the supply, not above that current and not below 1.25 times the load; ferrules, not solder, under screws',
        },
        { text: 'give power.wires and each wire is held against its limits' },
      ];
    },
    remedies: [],
    weight: 0.1,
    better: 'lower',
  };
}

/** Current of a wire over the day at its largest, A. */
function currentIn(run: DayRun, { current, feeds, supply }: Wire): number {
  const voltage = run.cabinet.power.supplies[supply]?.voltage;
  if (current !== undefined) return current;
  if (voltage === undefined) return 0;
  return (
    largest(
      sumOf(
        run,
        feeds.map((user) => lowVoltagePower(run, user)),
      ),
    ).value / voltage
  );
}

function wireOf(run: DayRun, id: string): Measure[] {
  const { cabinet } = run;
  const wire = cabinet.power.wires[id]!;
  const { section, gauge, length, insulation, where, fuse } = wire;
  const voltage = cabinet.power.supplies[wire.supply]?.voltage ?? 24;
  const current = currentIn(run, wire);
  const air = warmestAt(run, where);
  const [base, table] = gauge === undefined ? [cordCurrent(section), CORD_TABLE] : [gaugeCurrent(gauge), GAUGE_TABLE];
  const carries = base * ambientFactor(BEARS[insulation], air);
  const copper = air + (BEARS[insulation] - TABLE_AIR) * (current / base) ** 2;
  const lost = voltageDrop(current, length, flexibleResistance(section, copper));
  const about = { trade: 'power', part: `wires.${id}`, better: 'lower' as const };
  const at = `power.wires.${id}`;
  const carriesStep: Step = {
    text: `current that it may carry in air of that heat, ${insulation}`,
    value: carries,
    unit: 'electric-current',
    formula: 'table value · √((T_max − T)/(T_max − 30 °C))',
    source: `${table}; ${AMBIENT_LAW}`,
    inputs: [`${at}.section`, `${at}.insulation`],
  };
  const warmStep: Step = { text: 'hottest air along it', value: air, unit: 'temperature', inputs: [`${at}.where`] };
  return [
    {
      ...about,
      quantity: 'wire-drop',
      title: 'share of the voltage that the wire loses',
      value: lost / voltage,
      unit: 'share',
      limit: dropLimit(cabinet, voltage),
      get steps(): readonly Step[] {
        return [
          { text: 'largest current', value: current, unit: 'electric-current', inputs: [`${at}.current`] },
          warmStep,
          {
            text: 'resistance of warm copper over that at 20 °C',
            value: copperFactor(copper),
            unit: 'number',
            formula: '1 + 0.00393 (T − 20 °C)',
            source: 'IEC 60028 (1925)',
          },
          {
            text: 'lost there and back',
            value: lost,
            unit: 'voltage',
            formula: '2 L I r',
            source: FLEXIBLE_TABLE,
            inputs: [`${at}.length`, `${at}.section`],
          },
          { text: 'half the voltage would lose four times the share: 24 V rather than 12 V' },
        ];
      },
      get remedies() {
        return thickerWire(cabinet, id);
      },
      cause: causes.thinWire,
      weight: 0.3,
    },
    {
      ...about,
      quantity: 'fuse-current',
      title: 'fuse against what the warm wire may carry',
      ...(fuse === undefined ? { missing: `say which fuse protects it: give ${at}.fuse` } : { value: fuse }),
      unit: 'electric-current',
      limit: fuseCurrentLimit(cabinet, carries, table),
      get steps(): readonly Step[] {
        return [
          warmStep,
          carriesStep,
          { text: 'a breaker of the mains does not see a short on this side: only this fuse does' },
        ];
      },
      get remedies() {
        return fuseFor(cabinet, id, current, carries);
      },
      cause: causes.fuseUnfit,
      weight: 0.9,
    },
    ...(fuse === undefined
      ? []
      : [
          {
            ...about,
            quantity: 'fuse-share',
            title: 'load of the fuse',
            value: current / fuse,
            unit: 'share',
            limit: fuseShareLimit(cabinet),
            get steps(): readonly Step[] {
              return [
                { text: 'largest current', value: current, unit: 'electric-current' },
                { text: 'fuse', value: fuse, unit: 'electric-current', inputs: [`${at}.fuse`] },
                carriesStep,
              ];
            },
            get remedies() {
              return fuseFor(cabinet, id, current, carries);
            },
            cause: causes.fuseUnfit,
            weight: 0.3,
          } satisfies Measure,
        ]),
  ];
}

/** Where each fuse sits. */
export function fusePlaces(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.power.wires)
    .filter(([, { fuse }]) => fuse !== undefined)
    .map(([id, { fuseAt }]) => ({
      trade: 'power',
      quantity: 'fuse-place',
      part: `wires.${id}`,
      title: 'unprotected length before the fuse',
      value: fuseAt,
      unit: 'length',
      limit: fusePlaceLimit(cabinet),
      steps: [
        {
          text: 'from the supply to the fuse: a short before it is cut off by nothing',
          value: fuseAt,
          unit: 'length',
          inputs: [`power.wires.${id}.fuseAt`],
        },
      ],
      get remedies() {
        return fuseNear(id);
      },
      cause: causes.fuseUnfit,
      weight: 0.7,
      better: 'lower' as const,
    }));
}
