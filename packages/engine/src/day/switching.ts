// Brings all switches to what the present moment asks for: at the start, at every break and after every event.

import { courseSlope, courseValue } from './course.ts';
import { COASTING, type Day, evaluate, HEATING, HOLDING, OFF, proportionalSpeed, setForced } from './day.ts';
import { addFans } from './fan-curve.ts';
import { setConductionMatrix } from './heat-matrix.ts';
import { findIslands } from './islands.ts';
import { keepBranches } from './pressures.ts';
import { addFading } from './transport-state.ts';
import { warnOfHeldBack, warnOfPoints } from './warn.ts';

const BED_WORDS = ['off', 'heating', 'holding', 'coasting'] as const;
/** K: nearer than this a bed is at its set-point. */
const AT_SET = 1e-7;
/** A held bed leaves its set-point only when it needs more than this beyond its power, W: rounding is no event. */
const POWER_SLACK = 1e-9;
/** Times that switches may answer one another at one moment before they are left as they are. */
const MOST_ROUNDS = 200;

/** Sets everything for `moment.time` and settles what answers at once. Leaves the rates of the state just after. */
export function settle(day: Day, first: boolean): void {
  setModes(day);
  let shapeChanged = setSwitches(day, first);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    evaluate(day, day.y, day.c, day.moment.time, day.heatRate, day.transportRate);
    if (switchThermostats(day)) {
      shapeChanged = setSwitches(day, false) || shapeChanged;
      continue;
    }
    if (!releaseBeds(day)) break;
    setSteadyHeat(day);
  }
  keepBranches(day.air);
  if (shapeChanged) {
    warnOfHeldBack(day);
    warnOfPoints(day);
  }
}

function say(day: Day, what: string, to: string): void {
  day.events.push({ time: day.moment.time, what, to });
}

function setModes(day: Day): void {
  const { machines } = day.plant.controls;
  const { time, modes } = day.moment;
  for (let m = 0; m < machines.length; m += 1) {
    const machine = machines[m]!;
    // Of jobs that overlap the later one rules.
    const job = machine.jobs.findLastIndex(({ start, end }) => start <= time && time < end);
    if (job === day.job[m]) continue;
    day.job[m] = job;
    const mode = job < 0 ? 'idle' : machine.jobs[job]!.mode;
    if (mode !== 'idle' && !machine.modes.has(mode)) {
      throw new Error(`The schedule puts "${machine.name}" into the mode "${mode}", which it does not have`);
    }
    if (mode !== modes[m]) say(day, machine.name, mode);
    modes[m] = mode;
    const set = machine.modes.get(mode)?.bedSet;
    day.bedSet[m] = set ?? Number.NaN;
    if (machine.bedSlot < 0) continue;
    const above = set === undefined ? Number.NaN : day.y[machine.bedSlot]! - set;
    if (set === undefined) setBed(day, m, OFF);
    else if (above < -AT_SET) setBed(day, m, HEATING);
    else if (above > AT_SET) setBed(day, m, COASTING);
    else holdBed(day, m);
  }
}

export function setBed(day: Day, m: number, state: number): void {
  const { bedSlot, name, powerMax } = day.plant.controls.machines[m]!;
  day.bedPower[m] = state === HEATING ? powerMax : 0;
  const changed = state !== day.bedState[m];
  day.bedState[m] = state;
  day.holder[bedSlot] = state === HOLDING ? m : holderOf(day, bedSlot);
  if (changed) say(day, name, BED_WORDS[state]!);
}

/** Who holds the slot now: the bed of another machine may be at its set-point in the same place. */
function holderOf(day: Day, slot: number): number {
  return day.plant.controls.machines.findIndex(({ bedSlot }, m) => bedSlot === slot && day.bedState[m] === HOLDING);
}

/** Puts the bed exactly on its set-point and keeps it there. */
export function holdBed(day: Day, m: number): void {
  const { bedSlot } = day.plant.controls.machines[m]!;
  day.broughtToSet += day.plant.heat.capacity[bedSlot]! * (day.bedSet[m]! - day.y[bedSlot]!);
  day.y[bedSlot] = day.bedSet[m]!;
  setBed(day, m, HOLDING);
}

/** Beds that cannot hold: too weak, or warmed from outside. */
function releaseBeds(day: Day): boolean {
  let released = false;
  for (let m = 0; m < day.bedState.length; m += 1) {
    if (day.bedState[m] !== HOLDING) continue;
    const power = day.bedPower[m]!;
    const { powerMax } = day.plant.controls.machines[m]!;
    if (power > powerMax + POWER_SLACK) setBed(day, m, HEATING);
    else if (power < -POWER_SLACK) setBed(day, m, COASTING);
    else continue;
    released = true;
  }
  return released;
}

/** What a thermostat reads. */
export function readingOf(
  sensed: { readonly slot: number; readonly cell: number },
  y: Float64Array,
  c: Float64Array,
): number {
  return sensed.slot >= 0 ? y[sensed.slot]! : c[sensed.cell]!;
}

/** Switches every thermostat whose reading asks for it. */
function switchThermostats(day: Day): boolean {
  const { thermostats } = day.plant.controls;
  let switched = false;
  for (let i = 0; i < thermostats.length; i += 1) {
    const { sense, on, off, sensed } = thermostats[i]!;
    const reading = readingOf(sensed, day.y, day.c);
    const isOn = day.moment.thermostats[i] === 1;
    const level = isOn ? off : on;
    const rising = (sense === 'above') !== isOn;
    if (rising ? reading < level : reading > level) continue;
    flipThermostat(day, i);
    switched = true;
  }
  return switched;
}

export function flipThermostat(day: Day, i: number): void {
  const state = day.moment.thermostats[i] === 1 ? 0 : 1;
  day.moment.thermostats[i] = state;
  say(day, day.plant.controls.thermostats[i]!.name, state === 1 ? 'on' : 'off');
}

/** Returns whether paths have opened or shut or fans changed. */
function setSwitches(day: Day, first: boolean): boolean {
  const { controls } = day.plant;
  const shapeChanged = setAir(day, first);
  setHeat(day, first);
  setForced(day);
  setBoundaries(day);
  for (let i = 0; i < controls.recirculations.length; i += 1) {
    day.transport.recirculationOn[i] = controls.recirculations[i]!(day.moment) ? 1 : 0;
  }
  setEmissions(day);
  return shapeChanged;
}

function setAir(day: Day, first: boolean): boolean {
  const { air, moment, plant } = day;
  const { controls } = plant;
  let doors = first;
  for (let p = 0; p < controls.paths.length; p += 1) {
    const open = controls.paths[p]!(moment) ? 1 : 0;
    if (open !== air.open[p]) doors = true;
    air.open[p] = open;
  }
  if (doors) findIslands(plant.air, air);
  let fans = false;
  const following: number[] = [];
  for (let p = 0; p < plant.air.pathCount; p += 1) {
    const start = plant.air.fanStart[p]!;
    const end = plant.air.fanStart[p + 1]!;
    let changed = first;
    for (let f = start; f < end; f += 1) {
      const speed = fanSpeed(day, f);
      if (speed !== air.speed[f]) changed = true;
      air.speed[f] = speed;
      const law = controls.fans[f]!.fan.speed;
      if (speed > 0 && typeof law === 'object' && 'proportional' in law && following.at(-1) !== p) following.push(p);
    }
    if (changed) addFans(air.curves[p]!, plant.air.fans[p]!, air.speed, start);
    fans ||= changed;
  }
  day.following = following;
  if (doors || fans) air.predictable = false;
  return doors || fans;
}

function fanSpeed(day: Day, f: number): number {
  const { fan, on, stages, sensor } = day.plant.controls.fans[f]!;
  const { speed } = fan;
  if (!on(day.moment)) return 0;
  if (speed === undefined) return 1;
  if (typeof speed === 'number') return speed;
  if ('stages' in speed) {
    return stages.reduce((most, stage) => (stage.when(day.moment) ? Math.max(most, stage.speed) : most), 0);
  }
  return Math.max(proportionalSpeed(speed.proportional, day.y[sensor.slot]!), 1e-9);
}

function setHeat(day: Day, first: boolean): void {
  const { plant, heat, moment } = day;
  const { controls } = plant;
  let conducts = first;
  for (let i = 0; i < controls.conductances.length; i += 1) {
    const active = controls.conductances[i];
    if (active === undefined) continue;
    const conductance = active(moment) ? plant.heat.conductance[i]! : 0;
    conducts ||= conductance !== heat.conductance[i];
    heat.conductance[i] = conductance;
  }
  if (conducts) setConductionMatrix(plant.heat, heat);
  for (let i = 0; i < controls.exchanges.length; i += 1) heat.exchangeOn[i] = controls.exchanges[i]!(moment) ? 1 : 0;
  setSteadyHeat(day);
}

/** Powers that last until the next switch. */
function setSteadyHeat(day: Day): void {
  const { plant, heat, moment } = day;
  const { controls, network } = plant;
  const { steady } = heat;
  steady.fill(0);
  heat.courseCount = 0;
  heat.courseTime = moment.time;
  for (let i = 0; i < controls.sources.length; i += 1) {
    const { slot, on } = controls.sources[i]!;
    if (!on(moment)) continue;
    const { watts, profile } = network.heatSources[i]!;
    if (profile === undefined) {
      steady[slot] = steady[slot]! + watts;
      continue;
    }
    heat.courseSlot[heat.courseCount] = slot;
    heat.courseStart[heat.courseCount] = watts * courseValue(profile, moment.time);
    heat.courseRate[heat.courseCount] = watts * courseSlope(profile, moment.time);
    heat.courseCount += 1;
  }
  for (let m = 0; m < controls.machines.length; m += 1) {
    const { modes, bedSlot, powerMax, supplySlot, supplyShare } = controls.machines[m]!;
    const mode = modes.get(moment.modes[m]!);
    mode?.powers.forEach(({ watts }, i) => {
      steady[mode.slots[i]!] = steady[mode.slots[i]!]! + watts;
    });
    if (day.bedState[m] !== HEATING) continue;
    steady[bedSlot] = steady[bedSlot]! + powerMax;
    if (supplySlot >= 0) steady[supplySlot] = steady[supplySlot]! + supplyShare * powerMax;
  }
}

/** Values and slopes of what follows a course. */
function setBoundaries(day: Day): void {
  const { plant, heat, transport, moment, y, c } = day;
  const { network } = plant;
  const { firstFixed } = plant.heat.layout;
  heat.fixedMoves = false;
  network.zones.forEach(({ temperature }, z) => {
    if (temperature.kind !== 'fixed') return;
    const slot = plant.heat.zoneSlot[z]!;
    const rate = courseSlope(temperature.profile, moment.time);
    y[slot] = courseValue(temperature.profile, moment.time);
    heat.fixedRate[slot - firstFixed] = rate;
    heat.fixedMoves ||= rate !== 0;
  });
  transport.outsideMoves = false;
  network.contaminants.forEach(({ outside }, k) => {
    if (outside === undefined) return;
    network.zones.forEach(({ name }, z) => {
      const profile = outside[name];
      if (profile === undefined) return;
      const cell = plant.transport.placeOf[z]! * plant.transport.count + k;
      c[cell] = courseValue(profile, moment.time);
      transport.outsideRate[cell] = courseSlope(profile, moment.time);
      transport.outsideMoves ||= transport.outsideRate[cell] !== 0;
    });
  });
}

function setEmissions(day: Day): void {
  const { transport, moment } = day;
  const { time } = moment;
  const { emissions } = day.plant.controls;
  transport.emission.fill(0);
  transport.fadingCount = 0;
  for (let i = 0; i < emissions.length; i += 1) {
    const { cell, rate, burst, tail, when, machine } = emissions[i]!;
    const on = when(moment);
    const job = machine < 0 ? 0 : day.job[machine]!;
    if (on && (day.emissionOn[i] === 0 || job !== day.emissionJob[i])) day.emissionStart[i] = time;
    if (!on && day.emissionOn[i] === 1) day.emissionEnd[i] = time;
    day.emissionOn[i] = on ? 1 : 0;
    day.emissionJob[i] = job;
    if (on) {
      transport.emission[cell] = transport.emission[cell]! + rate;
      if (burst !== undefined) addFading(transport, cell, rate * (burst.ratio - 1), day.emissionStart[i]!, burst.time);
    } else if (tail !== undefined && !Number.isNaN(day.emissionEnd[i]!)) {
      addFading(transport, cell, rate * tail.share, day.emissionEnd[i]!, tail.time);
    }
  }
}
