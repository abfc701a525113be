// One step of the time integrator: temperatures, then concentrations with the flows of the same stages.
// Hot: no allocation, no checks.

import { type Day, evaluate } from './day.ts';
import { assembleHeat, freeze } from './heat-matrix.ts';
import type { Method } from './rosenbrock.ts';
import { solve } from './sparse-lu.ts';
import { assembleTransport } from './transport-matrix.ts';

export interface Step {
  readonly method: Method;
  /** Stages U_i of temperatures and of concentrations with loads. */
  readonly heatStages: readonly Float64Array[];
  readonly cellStages: readonly Float64Array[];
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
  /** 1 for temperatures that the error control looks at, 0 for stars and fixed zones. */
  readonly watchedSlot: Float64Array;
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
  const stages = Array.from({ length: method.stages });
  return {
    method,
    heatStages: stages.map(() => new Float64Array(slots)),
    cellStages: stages.map(() => new Float64Array(cells)),
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
    observe: undefined,
  };
}

/** Keeps what the coming attempts have in common. The day's rates are those of its present state. */
export function startStep(day: Day, step: Step): void {
  freeze(day.plant.heat, day.heat, day.air, day.y);
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
  assembleHeat(plant.heat, day.heat, day.air, y, inverse, day.held);
  if (hasCells) assembleTransport(plant.transport, day.transport, day.air, day.heat, c, inverse);
  const drifts = setDrifts(day, step);
  for (let i = 0; i < method.stages; i += 1) {
    let heatRate = day.heatRate;
    let cellRate = day.transportRate;
    if (i > 0) {
      combine(stageY, y, method.a[i]!, heatStages, i);
      if (hasCells) combine(stageC, c, method.a[i]!, cellStages, i);
      evaluate(day, stageY, stageC, day.moment.time + method.node[i]! * length, stageHeat, stageCells);
      heatRate = stageHeat;
      cellRate = stageCells;
    }
    if (i > 0) step.observe?.(i, stageY, stageC, day.moment.time + method.node[i]! * length);
    solveHeatStage(day, step, i, length, inverse, heatRate, drifts);
    if (hasCells) solveCellStage(day, step, i, length, inverse, cellRate, drifts);
  }
  combine(step.endY, y, method.m, heatStages, method.stages);
  let error = heatError(step) / tolerance;
  if (hasCells) {
    combine(step.endC, c, method.m, cellStages, method.stages);
    error = Math.max(error, cellError(day, step) / relative);
  }
  // A step so bad that numbers overflow is a step to be tried shorter.
  return Number.isNaN(error) ? Number.POSITIVE_INFINITY : error;
}

/** Evaluates the rates at the end of the step. */
export function evaluateEnd(day: Day, step: Step, length: number): void {
  evaluate(day, step.endY, step.endC, day.moment.time + length, step.endHeat, step.endCells);
}

/** out = base + Σ share_j stage_j over the first `count` stages. */
function combine(
  out: Float64Array,
  base: Float64Array,
  shares: Float64Array,
  stages: readonly Float64Array[],
  count: number,
): void {
  out.set(base);
  for (let j = 0; j < count; j += 1) {
    const share = shares[j]!;
    if (share === 0) continue;
    const stage = stages[j]!;
    for (let k = 0; k < out.length; k += 1) out[k] = out[k]! + share * stage[k]!;
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
  const { method, heatStages } = step;
  const { plant, held, heat } = day;
  const { layout, capacity } = plant.heat;
  const { unknowns, firstFixed } = layout;
  const u = heatStages[i]!;
  u.set(rate);
  for (let j = 0; j < i; j += 1) {
    const share = method.c[i]![j]! / length;
    const stage = heatStages[j]!;
    for (let k = 0; k < u.length; k += 1) u[k] = u[k]! + share * capacity[k]! * stage[k]!;
  }
  const moved = length * method.g[i]!;
  if (drifts) for (let k = 0; k < unknowns; k += 1) u[k] = u[k]! + moved * step.heatDrift[k]!;
  // Stars have no capacity and no balance of their own to bring in.
  for (let k = 0; k < unknowns; k += 1) if (held[k] === 1 || capacity[k] === 0) u[k] = 0;
  solve(layout.pattern, heat.matrix, 0, u, 0);
  for (let f = 0; f < heat.fixedRate.length; f += 1) u[firstFixed + f] = moved * heat.fixedRate[f]!;
  const { sensors } = plant.controls;
  for (let s = 0; s < sensors.length; s += 1) {
    const { slot, at, lag } = sensors[s]!;
    u[slot] = lag > 0 ? (u[slot]! + u[at]! / lag) / (inverse + 1 / lag) : u[at]!;
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
  const { method, cellStages } = step;
  const { transport: net } = day.plant;
  const { transport: state } = day;
  const { zones, count, rowOf, pattern, valueCount } = net;
  const v = cellStages[i]!;
  v.set(rate);
  const cells = count * zones;
  for (let j = 0; j < i; j += 1) {
    const share = method.c[i]![j]! / length;
    const stage = cellStages[j]!;
    for (let k = 0; k < cells; k += 1) v[k] = v[k]! + share * net.volume[k % zones]! * stage[k]!;
    for (let k = cells; k < v.length; k += 1) v[k] = v[k]! + share * stage[k]!;
  }
  const moved = length * method.g[i]!;
  const { right } = day;
  for (let k = 0; k < count; k += 1) {
    const base = k * zones;
    for (let z = 0; z < zones; z += 1) {
      const row = rowOf[z]!;
      if (row >= 0) right[row] = v[base + z]! + (drifts ? moved * step.cellDrift[base + z]! : 0);
      else v[base + z] = moved * state.outsideRate[base + z]!;
    }
    if (state.outsideMoves) {
      for (const { row, zone, position } of net.boundary) {
        right[row] = right[row]! - state.matrix[k * valueCount + position]! * v[base + zone]!;
      }
    }
    solve(pattern, state.matrix, k * valueCount, right, 0);
    for (let z = 0; z < zones; z += 1) if (rowOf[z]! >= 0) v[base + z] = right[rowOf[z]!]!;
  }
  for (let l = 0; l < net.carbon.length; l += 1) {
    v[cells + l] = (v[cells + l]! + caughtSlope(day, l, v)) / inverse;
  }
}

/** What a carbon bed catches more per second, kg/kg, when the concentrations change by `v`, with the frozen flows. */
function caughtSlope(day: Day, l: number, v: Float64Array): number {
  const { transport: net } = day.plant;
  const { contaminant: k, efficiency, perUnit } = net.carbon[l]!;
  const base = k * net.zones;
  let caught = 0;
  const end = day.air.openCount + day.air.fixedCount;
  for (let i = 0; i < end; i += 1) {
    const p = day.air.openList[i]!;
    if (net.carbonOnPath[k * net.paths + p] !== l) continue;
    const flow = day.heat.frozenFlow[p]! / net.referenceDensity;
    const source = base + (flow >= 0 ? net.pathAt.a[p]! : net.pathAt.b[p]!);
    caught += net.pass[k * net.paths + p]! * efficiency * Math.abs(flow) * v[source]!;
  }
  const count = net.recirculationFlow.length;
  for (let r = 0; r < count; r += 1) {
    if (net.carbonOnRecirculation[k * count + r] !== l || day.transport.recirculationOn[r] === 0) continue;
    const passes = 1 - net.recirculationEfficiency[k * count + r]!;
    caught += passes * efficiency * net.recirculationFlow[r]! * v[base + net.recirculationZone[r]!]!;
  }
  return perUnit * caught;
}

function heatError({ method, heatStages, watchedSlot }: Step): number {
  const { e, stages } = method;
  let worst = 0;
  for (let k = 0; k < watchedSlot.length; k += 1) {
    let sum = 0;
    for (let j = 0; j < stages; j += 1) sum += e[j]! * heatStages[j]![k]!;
    const size = (sum < 0 ? -sum : sum) * watchedSlot[k]!;
    // Written so that NaN wins.
    if (!(size <= worst)) worst = size;
  }
  return worst;
}

function cellError(day: Day, { method, cellStages, endC }: Step): number {
  const { transport: net } = day.plant;
  const { e, stages } = method;
  let worst = 0;
  for (let k = 0; k < net.count; k += 1) {
    for (let z = 0; z < net.zones; z += 1) {
      if (net.free[z] === 0) continue;
      const cell = k * net.zones + z;
      let sum = 0;
      for (let j = 0; j < stages; j += 1) sum += e[j]! * cellStages[j]![cell]!;
      const size = Math.abs(sum) / Math.max(net.scale[k]!, Math.abs(day.c[cell]!), Math.abs(endC[cell]!));
      if (!(size <= worst)) worst = size;
    }
  }
  return worst;
}
