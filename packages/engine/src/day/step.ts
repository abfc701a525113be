// One step of the time integrator: temperatures, then concentrations with the flows of the same stages.
// Hot: no allocation, no checks.

import { type Day, evaluate } from './day.ts';
import { assembleHeat, freeze } from './heat-matrix.ts';
import type { Method } from './rosenbrock.ts';
import { solve, solveMany } from './sparse-lu.ts';
import { AIR_SHARE, OWN_ERROR } from './step-control.ts';
import { assembleTransport, freezeTransport, givenBack } from './transport-matrix.ts';

export interface Step {
  readonly method: Method;
  /** Stages U_i of temperatures and of concentrations with loads, one after the other. */
  readonly heatStages: Float64Array;
  readonly cellStages: Float64Array;
  /** c_ij/h of the stage at hand. */
  readonly shares: Float64Array;
  /** Room for the diagonal of a matrix. */
  readonly diagonal: Float64Array;
  readonly stageY: Float64Array;
  readonly stageC: Float64Array;
  readonly stageHeat: Float64Array;
  readonly stageCells: Float64Array;
  /** Explicit slope of the heat rates in time, W/s. */
  readonly heatDrift: Float64Array;
  readonly cellDrift: Float64Array;
  /** State and rates at the end. */
  readonly endY: Float64Array;
  readonly endC: Float64Array;
  readonly endHeat: Float64Array;
  readonly endCells: Float64Array;
  /** How much the error control minds each temperature at most: 1, less where errors die away soon, 0 for stars and fixed zones. */
  readonly watchedSlot: Float64Array;
  /** One over the time constant with which each of them forgets an error, 1/s, as it was after the last jump. */
  readonly pace: Float64Array;
  /** Slots of the stars, which have no balance of their own. */
  readonly starSlots: Int32Array;
  /** Called when the rates of stage i are fresh; for the ledger. */
  observe: ((stage: number, y: Float64Array, c: Float64Array, time: number) => void) | undefined;
}

export function newStep(day: Day, method: Method): Step {
  const { layout, capacity } = day.plant.heat;
  const slots = day.y.length;
  const cells = day.c.length;
  const watched = new Float64Array(slots);
  for (let slot = 0; slot < slots; slot += 1) {
    if (slot < layout.firstFixed ? capacity[slot]! > 0 : slot >= layout.firstSensor) watched[slot] = 1;
  }
  const stars = Array.from({ length: layout.firstFixed }, (_, slot) => slot).filter((slot) => capacity[slot] === 0);
  return {
    method,
    heatStages: new Float64Array(method.stages * slots),
    cellStages: new Float64Array(method.stages * cells),
    shares: new Float64Array(method.stages),
    diagonal: new Float64Array(Math.max(slots, cells)),
    stageY: new Float64Array(slots),
    stageC: new Float64Array(cells),
    stageHeat: new Float64Array(slots),
    stageCells: new Float64Array(cells),
    heatDrift: new Float64Array(slots),
    cellDrift: new Float64Array(cells),
    endY: new Float64Array(slots),
    endC: new Float64Array(cells),
    endHeat: new Float64Array(slots),
    endCells: new Float64Array(cells),
    watchedSlot: watched,
    pace: new Float64Array(slots),
    starSlots: Int32Array.from(stars),
    observe: undefined,
  };
}

/** Keeps what the coming attempts have in common. The day's rates are those of its present state. */
export function startStep(day: Day, step: Step): void {
  freeze(day.plant.heat, day.heat, day.air, day.y);
  if (day.plant.transport.count > 0) freezeTransport(day.plant.transport, day.transport, day.air, day.c, day.y);
  step.observe?.(0, day.y, day.c, day.moment.time);
}

/**
 * Tries a step of `length` from the day's state; the end lies in `step.endY`, `step.endC`.
 * Returns the error estimate as a share of what is allowed: `tolerance` K, `relative` of max(scale, |C|).
 */
export function tryStep(day: Day, step: Step, length: number, tolerance: number, relative: number): number {
  const { method, heatStages, cellStages, stageY, stageC, stageHeat, stageCells } = step;
  const { plant, y, c } = day;
  const inverse = 1 / (method.gamma * length);
  const hasCells = plant.transport.count > 0;
  assembleHeat(plant.heat, day.heat, y, inverse, day.holder);
  if (hasCells) assembleTransport(plant.transport, day.transport, inverse);
  const drifts = setDrifts(day, step);
  for (let i = 0; i < method.stages; i += 1) {
    let heatRate = day.heatRate;
    let cellRate = day.transportRate;
    if (i > 0) {
      const time = day.moment.time + method.node[i]! * length;
      combine(stageY, y, method.a[i]!, heatStages, i);
      if (hasCells) combine(stageC, c, method.a[i]!, cellStages, i);
      if (impossible(day, stageY)) return Number.POSITIVE_INFINITY;
      evaluate(day, stageY, stageC, time, stageHeat, stageCells);
      heatRate = stageHeat;
      cellRate = stageCells;
      step.observe?.(i, stageY, stageC, time);
    }
    for (let j = 0; j < i; j += 1) step.shares[j] = method.c[i]![j]! / length;
    solveHeatStage(day, step, i, length, inverse, heatRate, drifts);
    if (hasCells) solveCellStage(day, step, i, length, inverse, cellRate, drifts);
  }
  combine(step.endY, y, method.m, heatStages, method.stages);
  let error = heatError(step, length) / tolerance;
  if (hasCells) {
    combine(step.endC, c, method.m, cellStages, method.stages);
    error = Math.max(error, cellError(day, step) / relative);
  }
  // A step so bad that numbers overflow is a step to be tried shorter.
  return Number.isNaN(error) ? Number.POSITIVE_INFINITY : error;
}

/** Whether a stage of a step far too long has overshot below 0 K, where air has no density and no flow can be sought. */
function impossible({ plant }: Day, y: Float64Array): boolean {
  const { zoneSlot, layout } = plant.heat;
  for (let z = 0; z < zoneSlot.length; z += 1) {
    const slot = zoneSlot[z]!;
    if (slot < layout.firstFixed && !(y[slot]! > 0)) return true;
  }
  return false;
}

/** Evaluates the rates at the end of the step. */
export function evaluateEnd(day: Day, step: Step, length: number): void {
  evaluate(day, step.endY, step.endC, day.moment.time + length, step.endHeat, step.endCells);
}

/** out = base + Σ share_j stage_j over the first `count` (1 to 4) of the stages, written out because it runs so often. */
function combine(
  out: Float64Array,
  base: Float64Array,
  shares: Float64Array,
  stages: Float64Array,
  count: number,
): void {
  const size = out.length;
  const s0 = shares[0]!;
  if (count === 1) {
    for (let k = 0; k < size; k += 1) out[k] = base[k]! + s0 * stages[k]!;
    return;
  }
  const s1 = shares[1]!;
  if (count === 2) {
    for (let k = 0; k < size; k += 1) out[k] = base[k]! + (s0 * stages[k]! + s1 * stages[size + k]!);
    return;
  }
  const s2 = shares[2]!;
  const two = 2 * size;
  if (count === 3) {
    for (let k = 0; k < size; k += 1) {
      out[k] = base[k]! + (s0 * stages[k]! + s1 * stages[size + k]! + s2 * stages[two + k]!);
    }
    return;
  }
  const s3 = shares[3]!;
  const three = 3 * size;
  for (let k = 0; k < size; k += 1) {
    out[k] = base[k]! + (s0 * stages[k]! + s1 * stages[size + k]! + s2 * stages[two + k]! + s3 * stages[three + k]!);
  }
}

/** Stage `i` = rate + weight · Σ share_j stage_j over the stages before it: the right side of its equations. */
function beginStage(
  stages: Float64Array,
  size: number,
  i: number,
  rate: Float64Array,
  weight: Float64Array,
  shares: Float64Array,
): void {
  if (i === 0) {
    stages.set(rate);
    return;
  }
  const s0 = shares[0]!;
  if (i === 1) {
    for (let k = 0; k < size; k += 1) stages[size + k] = rate[k]! + weight[k]! * (s0 * stages[k]!);
    return;
  }
  const s1 = shares[1]!;
  const two = 2 * size;
  if (i === 2) {
    for (let k = 0; k < size; k += 1) {
      stages[two + k] = rate[k]! + weight[k]! * (s0 * stages[k]! + s1 * stages[size + k]!);
    }
    return;
  }
  const s2 = shares[2]!;
  const three = 3 * size;
  for (let k = 0; k < size; k += 1) {
    stages[three + k] = rate[k]! + weight[k]! * (s0 * stages[k]! + s1 * stages[size + k]! + s2 * stages[two + k]!);
  }
}

function setDrifts(day: Day, step: Step): boolean {
  const { plant, heat, transport } = day;
  const fades = transport.fadingCount > 0;
  if (!heat.fixedMoves && heat.courseCount === 0 && !fades && !transport.outsideMoves) return false;
  const { heatDrift, cellDrift } = step;
  const { layout } = plant.heat;
  heatDrift.fill(0);
  cellDrift.fill(0);
  for (let i = 0; i < heat.courseCount; i += 1) {
    const slot = heat.courseSlot[i]!;
    heatDrift[slot] = heatDrift[slot]! + heat.courseRate[i]!;
  }
  for (const { row, slot, position } of layout.boundary) {
    heatDrift[row] = heatDrift[row]! - heat.matrix[position]! * heat.fixedRate[slot - layout.firstFixed]!;
  }
  for (let i = 0; i < transport.fadingCount; i += 1) {
    const cell = transport.fadingCell[i]!;
    const time = transport.fadingTime[i]!;
    const rate = transport.fadingRate[i]! * Math.exp((transport.fadingStart[i]! - day.moment.time) / time);
    cellDrift[cell] = cellDrift[cell]! - rate / time;
  }
  return true;
}

function solveHeatStage(
  day: Day,
  step: Step,
  i: number,
  length: number,
  inverse: number,
  rate: Float64Array,
  drifts: boolean,
): void {
  const { method, heatStages: u } = step;
  const { plant, holder, heat } = day;
  const { layout, capacity, bedRows } = plant.heat;
  const { unknowns, firstFixed, slots } = layout;
  const base = i * slots;
  beginStage(u, slots, i, rate, capacity, step.shares);
  const moved = length * method.g[i]!;
  if (drifts) for (let k = 0; k < unknowns; k += 1) u[base + k] = u[base + k]! + moved * step.heatDrift[k]!;
  for (let m = 0; m < bedRows.length; m += 1) {
    const { row } = bedRows[m]!;
    if (row >= 0 && holder[row] === m) u[base + row] = 0;
  }
  for (let k = 0; k < step.starSlots.length; k += 1) u[base + step.starSlots[k]!] = 0;
  solve(layout.pattern, heat.matrix, u, base);
  for (let f = 0; f < heat.fixedRate.length; f += 1) u[base + firstFixed + f] = moved * heat.fixedRate[f]!;
  const { sensors } = plant.controls;
  for (let s = 0; s < sensors.length; s += 1) {
    const { slot, at, lag } = sensors[s]!;
    const moves = u[base + at]!;
    u[base + slot] = lag > 0 ? (u[base + slot]! + moves / lag) / (inverse + 1 / lag) : moves;
  }
}

function solveCellStage(
  day: Day,
  step: Step,
  i: number,
  length: number,
  inverse: number,
  rate: Float64Array,
  drifts: boolean,
): void {
  const { method, cellStages: v } = step;
  const { transport: net } = day.plant;
  const { transport: state } = day;
  const { solved, cells, count, pattern, volume, carbon } = net;
  const size = day.c.length;
  const first = i * size;
  beginStage(v, size, i, rate, volume, step.shares);
  const moved = length * method.g[i]!;
  if (drifts) for (let k = 0; k < cells; k += 1) v[first + k] = v[first + k]! + moved * step.cellDrift[k]!;
  for (let cell = solved * count; cell < cells; cell += 1) v[first + cell] = moved * state.outsideRate[cell]!;
  if (state.outsideMoves) {
    for (const { row, place, position } of net.boundary) {
      for (let k = 0; k < count; k += 1) {
        const at = first + row * count + k;
        v[at] = v[at]! - state.matrix[position * count + k]! * v[first + place * count + k]!;
      }
    }
  }
  const firstHeld = solved * count;
  for (let l = 0; l < carbon.length; l += 1) {
    const { to } = state.frozenCarbon[l]!;
    if (to >= firstHeld) continue;
    v[first + to] = v[first + to]! + givenBack(net, state, l, inverse) * v[first + cells + l]!;
  }
  solveMany(pattern, state.matrix, v, first, count);
  for (let l = 0; l < carbon.length; l += 1) {
    const { from, cleaned, pass, steepness } = state.frozenCarbon[l]!;
    const caught = carbon[l]!.perUnit * cleaned;
    const fed = v[first + cells + l]! + caught * pass * v[first + from]!;
    v[first + cells + l] = fed / (inverse + caught * steepness);
  }
}

function heatError({ method, heatStages: u, watchedSlot, pace }: Step, length: number): number {
  const size = watchedSlot.length;
  const [e0, e1, e2, e3] = [method.e[0]!, method.e[1]!, method.e[2]!, method.e[3]!];
  let worst = 0;
  for (let k = 0; k < size; k += 1) {
    const sum = e0 * u[k]! + e1 * u[size + k]! + e2 * u[2 * size + k]! + e3 * u[3 * size + k]!;
    const share = Math.min(Math.max(OWN_ERROR * length * pace[k]!, AIR_SHARE), watchedSlot[k]!);
    // NaN wins.
    worst = Math.max(worst, Math.abs(sum * share));
  }
  return worst;
}

function cellError(day: Day, { method, cellStages: v, endC }: Step): number {
  const { count, solved, scale } = day.plant.transport;
  const { c } = day;
  const size = c.length;
  const [e0, e1, e2, e3] = [method.e[0]!, method.e[1]!, method.e[2]!, method.e[3]!];
  let worst = 0;
  for (let place = 0; place < solved; place += 1) {
    for (let k = 0; k < count; k += 1) {
      const cell = place * count + k;
      const sum = e0 * v[cell]! + e1 * v[size + cell]! + e2 * v[2 * size + cell]! + e3 * v[3 * size + cell]!;
      const share = Math.abs(sum) / Math.max(scale[k]!, Math.abs(c[cell]!), Math.abs(endC[cell]!));
      worst = Math.max(worst, share);
    }
  }
  return worst;
}
