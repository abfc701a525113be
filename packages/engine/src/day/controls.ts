// What is switched on: conditions, machines' modes, fans' speeds, thermostats. Asked anew at every break and event only.

import type { Fan, MachineMode, Network, Thermostat } from '../network/network.ts';
import type { AirNetwork } from './air-network.ts';
import type { HeatNetwork } from './heat-network.ts';
import type { TransportNetwork } from './transport-network.ts';
import { addBreaks, type Condition, compileWhen, indexOfName, type Moment, type WhenNames } from './when.ts';

/** A quantity that a thermostat or fan looks at: a temperature (slot ≥ 0) or a concentration (cell ≥ 0). */
export interface Sensed {
  readonly slot: number;
  readonly cell: number;
}

export interface CompiledFan {
  readonly fan: Fan;
  readonly on: Condition;
  readonly stages: readonly { readonly when: Condition; readonly speed: number }[];
  readonly sensor: Sensed;
}

/** Something that gives off a contaminant while its condition (or its machine's mode) holds. */
export interface CompiledEmission {
  readonly cell: number;
  readonly rate: number;
  readonly burst: { readonly ratio: number; readonly time: number } | undefined;
  readonly tail: { readonly share: number; readonly time: number } | undefined;
  readonly when: Condition;
  /** Machine whose every job starts the course anew, or -1. */
  readonly machine: number;
}

export interface CompiledMode extends MachineMode {
  readonly slots: readonly number[];
}

export interface CompiledMachine {
  readonly name: string;
  readonly modes: ReadonlyMap<string, CompiledMode>;
  /** Its jobs in rising order of start. */
  readonly jobs: readonly { readonly mode: string; readonly start: number; readonly end: number }[];
  readonly bedSlot: number;
  readonly powerMax: number;
  readonly supplySlot: number;
  readonly supplyShare: number;
}

export interface Controls {
  readonly paths: readonly Condition[];
  /** Fans in the order of the paths. */
  readonly fans: readonly CompiledFan[];
  readonly conductances: readonly (Condition | undefined)[];
  readonly sources: readonly { readonly slot: number; readonly on: Condition }[];
  readonly forced: readonly (readonly { readonly cube: number; readonly on: Condition; readonly fan: number }[])[];
  readonly exchanges: readonly Condition[];
  readonly recirculations: readonly Condition[];
  readonly emissions: readonly CompiledEmission[];
  readonly machines: readonly CompiledMachine[];
  readonly thermostats: readonly (Thermostat & { readonly sensed: Sensed })[];
  readonly sensors: readonly {
    readonly slot: number;
    readonly at: number;
    readonly lag: number;
    readonly offset: number;
  }[];
  /** Rising, inside the day. */
  readonly breaks: readonly number[];
}

export function compileControls(
  network: Network,
  air: AirNetwork,
  heat: HeatNetwork,
  transport: TransportNetwork,
): Controls {
  const names: WhenNames = {
    thermostats: network.thermostats.map(({ name }) => name),
    machines: network.machines.map(({ name }) => name),
  };
  const { layout } = heat;
  const slot = (name: string): number => layout.slotOf[layout.pointOf(name)]!;
  const sensedTemperature = (name: string): Sensed => {
    const sensor = network.sensors.findIndex((one) => one.name === name);
    return { slot: sensor >= 0 ? layout.firstSensor + sensor : slot(name), cell: -1 };
  };
  const zoneNames = network.zones.map(({ name }) => name);
  const contaminantNames = network.contaminants.map(({ name }) => name);
  const cell = (contaminant: string, zone: string): number =>
    transport.placeOf[indexOfName(zoneNames, zone, 'zone')]! * transport.count +
    indexOfName(contaminantNames, contaminant, 'contaminant');
  const condition = (when: Parameters<typeof compileWhen>[0]): Condition => compileWhen(when, names);
  const fans = air.fans.flat();
  const fanNames = fans.map(({ name }) => name);

  return {
    paths: network.paths.map(({ open }) => condition(open)),
    fans: fans.map((fan) => {
      const speed = fan.speed ?? 1;
      return {
        fan,
        on: condition(fan.control),
        stages:
          typeof speed === 'object' && 'stages' in speed
            ? speed.stages.map((stage) => ({ when: condition(stage.when), speed: stage.speed }))
            : [],
        sensor:
          typeof speed === 'object' && 'proportional' in speed
            ? sensedTemperature(speed.proportional.sensor)
            : { slot: -1, cell: -1 },
      };
    }),
    conductances: network.conductances.map(({ active }) => (active === undefined ? undefined : condition(active))),
    sources: network.heatSources.map((source) => ({ slot: slot(source.node), on: condition(source.active) })),
    forced: network.convections.map(({ forced }) =>
      forced.map(({ film, active, fan }) => ({
        cube: film ** 3,
        on: condition(active),
        fan: fan === undefined ? -1 : indexOfName(fanNames, fan, 'fan'),
      })),
    ),
    exchanges: network.exchanges.map(({ active }) => condition(active)),
    recirculations: network.recirculations.map(({ active }) => condition(active)),
    emissions: [
      ...network.emissions.map((emission) => ({
        cell: cell(emission.contaminant, emission.zone),
        rate: emission.rate,
        burst: emission.burst,
        tail: emission.tail,
        when: condition(emission.active),
        machine: -1,
      })),
      ...network.machines.flatMap((machine, index) =>
        machine.modes.flatMap((mode) =>
          mode.emissions.map((emission) => ({
            cell: cell(emission.contaminant, emission.zone),
            rate: emission.rate,
            burst: emission.burst,
            tail: emission.tail,
            when: ({ modes }: Moment) => modes[index] === mode.name,
            machine: index,
          })),
        ),
      ),
    ],
    machines: network.machines.map((machine) => ({
      name: machine.name,
      modes: new Map(
        machine.modes.map((mode) => [mode.name, { ...mode, slots: mode.powers.map(({ node }) => slot(node)) }]),
      ),
      jobs: network.schedule
        .filter((entry) => entry.machine === machine.name && entry.end > entry.start)
        .sort((a, b) => a.start - b.start),
      bedSlot: machine.bed === undefined ? -1 : slot(machine.bed.node),
      powerMax: machine.bed?.powerMax ?? 0,
      supplySlot: machine.bed?.supply === undefined ? -1 : slot(machine.bed.supply.node),
      supplyShare: machine.bed?.supply?.share ?? 0,
    })),
    thermostats: network.thermostats.map((thermostat) => ({
      ...thermostat,
      sensed:
        typeof thermostat.sensor === 'string'
          ? sensedTemperature(thermostat.sensor)
          : { slot: -1, cell: cell(thermostat.sensor.contaminant, thermostat.sensor.zone) },
    })),
    sensors: network.sensors.map(({ at, lag, offset }, i) => ({
      slot: layout.firstSensor + i,
      at: slot(at),
      lag,
      offset,
    })),
    breaks: breaksOf(network),
  };
}

/** All times inside the day at which something changes of itself. */
function breaksOf(network: Network): number[] {
  const times: number[] = [...network.breaks];
  for (const { open } of network.paths) addBreaks(open, times);
  for (const path of network.paths) {
    if (path.type !== 'fan-path') continue;
    for (const { control, speed } of path.fans) {
      addBreaks(control, times);
      if (typeof speed === 'object' && 'stages' in speed) for (const { when } of speed.stages) addBreaks(when, times);
    }
  }
  for (const { active } of network.conductances) if (active !== undefined) addBreaks(active, times);
  for (const { forced } of network.convections) for (const { active } of forced) addBreaks(active, times);
  for (const { active, profile } of network.heatSources) {
    addBreaks(active, times);
    for (const [time] of profile ?? []) times.push(time);
  }
  for (const { active } of [...network.exchanges, ...network.recirculations, ...network.emissions]) {
    addBreaks(active, times);
  }
  for (const { start, end } of network.schedule) times.push(start, end);
  for (const { temperature } of network.zones) {
    if (temperature.kind === 'fixed' && temperature.profile.length > 1) {
      for (const [time] of temperature.profile) times.push(time);
    }
  }
  for (const { outside } of network.contaminants) {
    for (const profile of Object.values(outside ?? {})) for (const [time] of profile) times.push(time);
  }
  const inside = times.filter((time) => time > 0 && time < network.duration);
  return [...new Set(inside)].sort((a, b) => a - b);
}
