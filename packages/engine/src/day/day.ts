// A day while it runs: its state, what is switched, and the rates of change at any state.

import { type AirState, newAirState } from './air-network.ts';
import { courseValue } from './course.ts';
import { addFans } from './fan-curve.ts';
import { evaluateHeat } from './heat-flow.ts';
import { type HeatState, newHeatState } from './heat-state.ts';
import { setDensities } from './path-flow.ts';
import type { Plant } from './plant.ts';
import { solvePressures } from './pressures.ts';
import type { DayEvent, Warning } from './record.ts';
import { evaluateTransport } from './transport-flow.ts';
import { newTransportState, type TransportState } from './transport-state.ts';
import type { Moment } from './when.ts';

export const OFF = 0;
export const HEATING = 1;
export const HOLDING = 2;
export const COASTING = 3;

export interface Day {
  readonly plant: Plant;
  readonly moment: Moment;
  readonly air: AirState;
  readonly heat: HeatState;
  readonly transport: TransportState;
  /** Temperatures by slot, K. */
  readonly y: Float64Array;
  /** Concentrations by cell, then carbon loads. */
  readonly c: Float64Array;
  /** Heat into each slot, W, and contaminant into each cell, units/s, at the present state. */
  readonly heatRate: Float64Array;
  readonly transportRate: Float64Array;
  /** Running job of each machine, or -1. */
  readonly job: Int32Array;
  readonly bedState: Uint8Array;
  /** K; NaN when the mode heats no bed. */
  readonly bedSet: Float64Array;
  /** W at the last evaluation. */
  readonly bedPower: Float64Array;
  /** Heat by which beds were put exactly on their set-points, J: what the location of events left over. */
  broughtToSet: number;
  /** Machine whose bed holds the slot, -1 where none does. Two heaters may warm the same air; then one of them holds it. */
  readonly holder: Int32Array;
  readonly emissionOn: Uint8Array;
  readonly emissionStart: Float64Array;
  readonly emissionEnd: Float64Array;
  readonly emissionJob: Int32Array;
  /** Paths with a fan whose speed follows a sensor, and that is on. */
  following: readonly number[];
  readonly events: DayEvent[];
  readonly warnings: Warning[];
}

export function newDay(plant: Plant): Day {
  const { network, air, heat, transport, controls } = plant;
  const { layout } = heat;
  const day: Day = {
    plant,
    moment: {
      time: 0,
      thermostats: Uint8Array.from(network.thermostats, ({ initial }) => (initial ? 1 : 0)),
      modes: network.machines.map(() => 'idle'),
    },
    air: newAirState(air, network),
    heat: newHeatState(heat, network.paths.length, network.heatSources.length),
    transport: newTransportState(transport),
    y: new Float64Array(layout.slots),
    c: new Float64Array(transport.cells + transport.carbon.length),
    heatRate: new Float64Array(layout.slots),
    transportRate: new Float64Array(transport.cells + transport.carbon.length),
    job: new Int32Array(controls.machines.length).fill(-1),
    bedState: new Uint8Array(controls.machines.length),
    bedSet: new Float64Array(controls.machines.length).fill(Number.NaN),
    bedPower: new Float64Array(controls.machines.length),
    broughtToSet: 0,
    holder: new Int32Array(layout.slots).fill(-1),
    emissionOn: new Uint8Array(controls.emissions.length),
    emissionStart: new Float64Array(controls.emissions.length),
    emissionEnd: new Float64Array(controls.emissions.length).fill(Number.NaN),
    emissionJob: new Int32Array(controls.emissions.length).fill(-1),
    following: [],
    events: [],
    warnings: [],
  };
  setStart(day);
  return day;
}

function setStart({ plant, y, c }: Day): void {
  const { network, heat, transport, controls } = plant;
  const { slotOf } = heat.layout;
  let point = 0;
  for (const { temperature } of network.zones) {
    y[slotOf[point++]!] = temperature.kind === 'free' ? temperature.initial : courseValue(temperature.profile, 0);
  }
  for (const { initial } of network.nodes) y[slotOf[point++]!] = initial;
  for (const wall of network.walls) {
    const count = wall.layers.reduce((sum, { nodes }) => sum + nodes, wall.grid === 'faces' ? 1 : 0);
    for (let i = 0; i < count; i += 1) y[slotOf[point++]!] = wall.initial;
  }
  for (const { slot, at, offset } of controls.sensors) y[slot] = y[at]! + offset;
  c.set(transport.initial);
  transport.carbon.forEach(({ start }, l) => {
    c[transport.cells + l] = start;
  });
}

/** Rates of change at a state: solves the flows, then sums heat (`intoHeat`, W by slot) and contaminants. Hot. */
export function evaluate(
  day: Day,
  y: Float64Array,
  c: Float64Array,
  time: number,
  intoHeat: Float64Array,
  intoCells: Float64Array,
): void {
  const { plant, air, heat, bedState, bedPower, holder } = day;
  const { controls } = plant;
  const { firstFixed } = plant.heat.layout;
  for (let i = 0; i < controls.sensors.length; i += 1) {
    const { slot, at, lag, offset } = controls.sensors[i]!;
    if (lag <= 0) y[slot] = y[at]! + offset;
  }
  if (day.following.length > 0) followSensors(day, y);
  setDensities(plant.air, air, y, plant.heat.zoneSlot);
  solvePressures(plant.air, air);
  evaluateHeat(plant.heat, heat, air, y, time, intoHeat);
  for (let m = 0; m < bedState.length; m += 1) {
    if (bedState[m] !== HOLDING) continue;
    const { bedSlot, supplySlot, supplyShare } = controls.machines[m]!;
    // What another bed holds at the same set-point needs nothing from this one.
    const power = holder[bedSlot] === m ? -intoHeat[bedSlot]! : 0;
    bedPower[m] = power;
    if (holder[bedSlot] === m) intoHeat[bedSlot] = 0;
    if (supplySlot >= 0) intoHeat[supplySlot] = intoHeat[supplySlot]! + supplyShare * power;
  }
  for (let f = 0; f < heat.fixedRate.length; f += 1) intoHeat[firstFixed + f] = heat.fixedRate[f]!;
  for (let i = 0; i < controls.sensors.length; i += 1) {
    const { slot, at, lag, offset } = controls.sensors[i]!;
    intoHeat[slot] = lag > 0 ? (y[at]! + offset - y[slot]!) / lag : intoHeat[at]! / plant.heat.capacity[at]!;
  }
  if (plant.transport.count > 0) {
    evaluateTransport(plant.transport, day.transport, air, heat, c, y, time, intoCells);
  }
}

/** Speed of a fan that follows a sensor. */
export function proportionalSpeed(
  { from, to, low, high }: { readonly from: number; readonly to: number; readonly low: number; readonly high: number },
  reading: number,
): number {
  const share = Math.min(Math.max((reading - from) / (to - from), 0), 1);
  return low + share * (high - low);
}

function followSensors(day: Day, y: Float64Array): void {
  const { plant, air } = day;
  for (let i = 0; i < day.following.length; i += 1) {
    const p = day.following[i]!;
    const first = plant.air.fanStart[p]!;
    const fans = plant.air.fans[p]!;
    for (let f = 0; f < fans.length; f += 1) {
      const { speed } = fans[f]!;
      if (typeof speed !== 'object' || !('proportional' in speed) || air.speed[first + f] === 0) continue;
      const reading = y[plant.controls.fans[first + f]!.sensor.slot]!;
      // A fan that is on never quite stands still: at rest it would be another path.
      air.speed[first + f] = Math.max(proportionalSpeed(speed.proportional, reading), 1e-9);
    }
    addFans(air.curves[p]!, fans, air.speed, first);
  }
  setForced(day);
}

/** Cubes of the forced films; those of fans go with speed^0.8. */
export function setForced(day: Day): void {
  const { plant, heat, air, moment } = day;
  for (let i = 0; i < heat.forced.length; i += 1) {
    let sum = 0;
    for (const { cube, on, fan } of plant.controls.forced[i]!) {
      if (!on(moment)) continue;
      sum += fan < 0 ? cube : cube * air.speed[fan]! ** 2.4;
    }
    heat.forced[i] = sum;
  }
}
