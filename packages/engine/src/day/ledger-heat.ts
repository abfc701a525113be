// The heat that crosses the border of a day's balance, as the integrator itself counts it. A step adds up its stages as
//     Σ b_i h (flux at stage i + its frozen slope · U_i + h g_i its drift),
// and so do the fluxes here, link by link at the border; they are never what closes the balance.

import { type Day, HEATING, HOLDING } from './day.ts';
import type { Step } from './step.ts';

/** Fluxes into the solved temperatures, W. */
const SOURCES = 0;
const BEDS = 1;
const CONDUCTED = 2;
const CARRIED = 3;
const KINDS = 4;

export interface HeatBook {
  /** Flux by kind at each stage. */
  readonly stage: Float64Array;
  /** J by kind. */
  readonly sum: Float64Array;
  moved: number;
  /** Enthalpy of carried air counts from here; balanced zones make the choice indifferent, K. */
  readonly reference: number;
  readonly start: number;
}

export function openHeatBook(day: Day, step: Step): HeatBook {
  const boundary = day.plant.network.zones.findIndex(({ temperature }) => temperature.kind === 'fixed');
  return {
    stage: new Float64Array(KINDS * step.method.stages),
    sum: new Float64Array(KINDS),
    moved: 0,
    reference: boundary < 0 ? day.y[0]! : day.y[day.plant.heat.zoneSlot[boundary]!]!,
    start: storedHeat(day),
  };
}

/** Σ C T of the solved temperatures, J. */
export function storedHeat({ plant, y }: Day): number {
  let sum = 0;
  for (let slot = 0; slot < plant.heat.layout.unknowns; slot += 1) sum += plant.heat.capacity[slot]! * y[slot]!;
  return sum;
}

/** Keeps the fluxes at a stage whose rates were just evaluated. */
export function observeHeat(day: Day, book: HeatBook, stage: number, y: Float64Array, time: number): void {
  const base = KINDS * stage;
  const { heat, plant, bedState, bedPower } = day;
  const { firstFixed } = plant.heat.layout;
  let sources = 0;
  for (let slot = 0; slot < firstFixed; slot += 1) sources += heat.steady[slot]!;
  for (let i = 0; i < heat.courseCount; i += 1) {
    if (heat.courseSlot[i]! < firstFixed) {
      sources += heat.courseStart[i]! + heat.courseRate[i]! * (time - heat.courseTime);
    }
  }
  let beds = 0;
  for (let m = 0; m < bedState.length; m += 1) {
    const { supplySlot, supplyShare } = plant.controls.machines[m]!;
    const power = bedPower[m]!;
    // A heating bed is part of the steady heat; a holding one only now adds to it.
    if (bedState[m] === HEATING) sources -= power;
    if (bedState[m] === HOLDING && supplySlot >= 0 && supplySlot < firstFixed) sources += supplyShare * power;
    beds += power;
  }
  book.stage[base + SOURCES] = sources;
  book.stage[base + BEDS] = beds;
  book.stage[base + CONDUCTED] = -conductedOut(day, y);
  book.stage[base + CARRIED] = carriedIn(day, y, book.reference, false);
}

/** Adds the accepted step to the sums. */
export function bookHeat(day: Day, step: Step, book: HeatBook, length: number): void {
  const { method, heatStages } = step;
  const { heat, plant } = day;
  for (let i = 0; i < method.stages; i += 1) {
    const u = heatStages.subarray(i * day.y.length, (i + 1) * day.y.length);
    const base = KINDS * i;
    const weight = method.b[i]! * length;
    let drift = 0;
    for (let k = 0; k < heat.courseCount; k += 1) {
      if (heat.courseSlot[k]! < plant.heat.layout.firstFixed) drift += heat.courseRate[k]!;
    }
    const parts = [
      book.stage[base + SOURCES]! + length * method.g[i]! * drift,
      book.stage[base + BEDS]! + heldSlope(day, u),
      book.stage[base + CONDUCTED]! - conductedSlope(day, u),
      book.stage[base + CARRIED]! + carriedIn(day, u, 0, true),
    ];
    parts.forEach((flux, kind) => {
      book.sum[kind] = book.sum[kind]! + weight * flux;
      book.moved += Math.abs(weight * flux);
    });
  }
}

/** Heat through conductions, radiation and films that end in a fixed zone. */
function conductedOut({ plant, heat }: Day, y: Float64Array): number {
  const { conduction, radiation, radiance, convection, landing, exchange, layout } = plant.heat;
  const { firstFixed } = layout;
  let out = 0;
  const outwards = (a: number, b: number): number => (b >= firstFixed ? 1 : 0) - (a >= firstFixed ? 1 : 0);
  for (let i = 0; i < conduction.count; i += 1) {
    const [a, b] = [conduction.a[i]!, conduction.b[i]!];
    out += outwards(a, b) * heat.conductance[i]! * (y[a]! - y[b]!);
  }
  for (let i = 0; i < radiation.count; i += 1) {
    const [a, b] = [radiation.a[i]!, radiation.b[i]!];
    out += outwards(a, b) * radiance[i]! * (y[a]! ** 4 - y[b]! ** 4);
  }
  for (let i = 0; i < convection.count; i += 1) if (landing[i]! >= firstFixed) out += heat.filmHeat[i]!;
  const perFlow = plant.heat.referenceDensity * plant.heat.heatCapacity;
  for (let i = 0; i < exchange.count; i += 1) {
    const [a, b] = [exchange.a[i]!, exchange.b[i]!];
    out += outwards(a, b) * perFlow * heat.exchangeFlow[i]! * (y[a]! - y[b]!);
  }
  return out;
}

function conductedSlope({ plant, heat }: Day, u: Float64Array): number {
  const { conduction, radiation, convection, landing, exchange, layout } = plant.heat;
  const { firstFixed } = layout;
  let out = 0;
  const outwards = (a: number, b: number): number => (b >= firstFixed ? 1 : 0) - (a >= firstFixed ? 1 : 0);
  for (let i = 0; i < conduction.count; i += 1) {
    const [a, b] = [conduction.a[i]!, conduction.b[i]!];
    out += outwards(a, b) * heat.conductance[i]! * (u[a]! - u[b]!);
  }
  for (let i = 0; i < radiation.count; i += 1) {
    const [a, b] = [radiation.a[i]!, radiation.b[i]!];
    out += outwards(a, b) * (heat.frozenRadiationA[i]! * u[a]! - heat.frozenRadiationB[i]! * u[b]!);
  }
  for (let i = 0; i < convection.count; i += 1) {
    if (landing[i]! >= firstFixed) out += heat.frozenFilm[i]! * (u[convection.a[i]!]! - u[convection.b[i]!]!);
  }
  for (let i = 0; i < exchange.count; i += 1) {
    const [a, b] = [exchange.a[i]!, exchange.b[i]!];
    out += outwards(a, b) * heat.frozenExchange[i]! * (u[a]! - u[b]!);
  }
  return out;
}

/**
 * Enthalpy that air brings in from fixed zones less what it takes there, counted from `reference`. A solved temperature in a
 * zone of fixed pressure also loses, at its own temperature, what flows in and not out again.
 */
function carriedIn({ plant, air, heat }: Day, y: Float64Array, reference: number, frozen: boolean): number {
  const { zoneSlot, change, heatCapacity, layout } = plant.heat;
  const { pathCount, from: sources, to: targets } = plant.air;
  const { firstFixed } = layout;
  const flow = frozen ? heat.frozenFlow : air.flow;
  const counter = frozen ? heat.frozenCounter : air.counter;
  let sum = 0;
  const stream = (from: number, to: number, mass: number): void => {
    if (from >= firstFixed && to < firstFixed) sum += mass * (y[from]! - reference);
    if (from < firstFixed && to >= firstFixed) sum -= mass * (y[from]! - reference);
  };
  for (let p = 0; p < pathCount; p += 1) {
    const [a, b] = [zoneSlot[sources[p]!]!, zoneSlot[targets[p]!]!];
    const back = counter[p]!;
    stream(a, b, Math.max(flow[p]!, 0) + back);
    stream(b, a, Math.max(-flow[p]!, 0) + back);
  }
  const [entering, leaving] = frozen ? [heat.frozenChangeIn, heat.frozenChangeOut] : [heat.changeIn, heat.changeOut];
  for (let i = 0; i < change.count; i += 1) {
    stream(change.b[i]!, change.a[i]!, entering[i]!);
    stream(change.a[i]!, change.b[i]!, leaving[i]!);
  }
  for (let z = 0; z < plant.air.zoneCount; z += 1) {
    const slot = plant.heat.zoneSlot[z]!;
    if (plant.air.fixedPressure[z] === 0 || slot >= firstFixed) continue;
    let gained = 0;
    for (let p = 0; p < pathCount; p += 1) {
      if (targets[p] === z) gained += flow[p]!;
      if (sources[p] === z) gained -= flow[p]!;
    }
    for (let i = 0; i < change.count; i += 1) {
      if (change.a[i] === slot) gained += entering[i]! - leaving[i]!;
      if (change.b[i] === slot) gained -= entering[i]! - leaving[i]!;
    }
    sum -= gained * (y[slot]! - reference);
  }
  return heatCapacity * sum;
}

/** Change of the power that held beds need when the temperatures change by `u`. */
function heldSlope({ plant, heat, bedState, holder }: Day, u: Float64Array): number {
  let power = 0;
  for (let m = 0; m < bedState.length; m += 1) {
    const { columns, row: slot } = plant.heat.bedRows[m]!;
    if (bedState[m] !== HOLDING || holder[slot] !== m) continue;
    const row = heat.frozenBedRows[m]!;
    // The matrix holds minus the slopes of the heat into the bed; what flows in less, the bed has to add.
    for (let k = 0; k < columns.length; k += 1) power += row[k]! * u[columns[k]!]!;
  }
  return power;
}

export interface HeatSums {
  readonly sources: number;
  readonly beds: number;
  readonly conducted: number;
  readonly carriedByAir: number;
  readonly moved: number;
}

/** Into the balance: sources and beds. Out of it, into the boundary: conducted and carried by air. */
export function heatSums({ sum, moved }: HeatBook, broughtToSet: number): HeatSums {
  return {
    sources: sum[SOURCES]!,
    beds: sum[BEDS]! + broughtToSet,
    conducted: -sum[CONDUCTED]!,
    carriedByAir: -sum[CARRIED]!,
    moved,
  };
}
