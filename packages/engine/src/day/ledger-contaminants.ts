// The contaminants' balances, counted as the integrator counts them (see ledger-heat.ts).

import type { Day } from './day.ts';
import type { Step } from './step.ts';
import type { TransportNetwork } from './transport-network.ts';

const EMITTED = 0;
const DEPOSITED = 1;
const COAGULATED = 2;
const FILTERED = 3;
const TO_BOUNDARY = 4;
const KINDS = 5;

export interface ContaminantBook {
  /** Fluxes, units/s, by stage, contaminant and kind. */
  readonly stage: Float64Array;
  /** Units, by contaminant and kind. */
  readonly sum: Float64Array;
  readonly moved: Float64Array;
  readonly start: Float64Array;
}

export function openContaminantBook(day: Day, step: Step): ContaminantBook {
  const { count } = day.plant.transport;
  return {
    stage: new Float64Array(step.method.stages * count * KINDS),
    sum: new Float64Array(count * KINDS),
    moved: new Float64Array(count),
    start: Float64Array.from({ length: count }, (_, k) => storedAmount(day, k)),
  };
}

/** Σ V C of the solved zones, units. */
export function storedAmount({ plant, c }: Day, k: number): number {
  const { count, solved, volume } = plant.transport;
  let sum = 0;
  for (let cell = k; cell < solved * count; cell += count) sum += volume[cell]! * c[cell]!;
  return sum;
}

export function observeContaminants(
  day: Day,
  book: ContaminantBook,
  stage: number,
  c: Float64Array,
  time: number,
): void {
  const { plant, transport } = day;
  const { count, solved, deposition, coagulation } = plant.transport;
  for (let k = 0; k < count; k += 1) {
    const at = (stage * count + k) * KINDS;
    const flux = book.stage.subarray(at, at + KINDS);
    flux.fill(0);
    for (let cell = k; cell < solved * count; cell += count) {
      flux[EMITTED] = flux[EMITTED]! + transport.emission[cell]!;
      flux[DEPOSITED] = flux[DEPOSITED]! + deposition[cell]! * c[cell]!;
      flux[COAGULATED] = flux[COAGULATED]! + coagulation[cell]! * c[cell]! * c[cell]!;
    }
    flux[EMITTED] = flux[EMITTED]! + fading(day, k, time, false);
    addStreams(day, flux, k, c, false);
  }
}

export function bookContaminants(day: Day, step: Step, book: ContaminantBook, length: number): void {
  const { plant, transport } = day;
  const { count, solved, deposition, coagulation } = plant.transport;
  const { method, cellStages } = step;
  const slope = new Float64Array(KINDS);
  for (let i = 0; i < method.stages; i += 1) {
    const v = cellStages.subarray(i * day.c.length, (i + 1) * day.c.length);
    const weight = method.b[i]! * length;
    for (let k = 0; k < count; k += 1) {
      slope.fill(0);
      for (let cell = k; cell < solved * count; cell += count) {
        slope[DEPOSITED] = slope[DEPOSITED]! + deposition[cell]! * v[cell]!;
        slope[COAGULATED] =
          slope[COAGULATED]! + 2 * coagulation[cell]! * transport.frozenConcentration[cell]! * v[cell]!;
      }
      slope[EMITTED] = length * method.g[i]! * fading(day, k, day.moment.time, true);
      addStreams(day, slope, k, v, true);
      for (let kind = 0; kind < KINDS; kind += 1) {
        const amount = weight * (book.stage[(i * count + k) * KINDS + kind]! + slope[kind]!);
        book.sum[k * KINDS + kind] = book.sum[k * KINDS + kind]! + amount;
        book.moved[k] = book.moved[k]! + Math.abs(amount);
      }
    }
  }
}

/** Bursts and tails in solved zones: their rate, or its slope in time. */
function fading({ plant, transport }: Day, k: number, time: number, drift: boolean): number {
  const { count, solved } = plant.transport;
  let sum = 0;
  for (let i = 0; i < transport.fadingCount; i += 1) {
    const cell = transport.fadingCell[i]!;
    if (cell % count !== k || cell >= solved * count) continue;
    const constant = transport.fadingTime[i]!;
    const rate = transport.fadingRate[i]! * Math.exp((transport.fadingStart[i]! - time) / constant);
    sum += drift ? -rate / constant : rate;
  }
  return sum;
}

/**
 * Adds what streams of air filter and carry over the border, from the flows themselves. With `frozen` they are those of the
 * step's matrix and `c` is a change.
 */
function addStreams(day: Day, flux: Float64Array, k: number, c: Float64Array, frozen: boolean): void {
  const { plant, air, heat } = day;
  const net = plant.transport;
  const flow = frozen ? heat.frozenFlow : air.flow;
  const counter = frozen ? heat.frozenCounter : air.counter;
  for (let p = 0; p < net.paths; p += 1) {
    const back = counter[p]!;
    const forward = (Math.max(flow[p]!, 0) + back) / net.referenceDensity;
    const backward = (Math.max(-flow[p]!, 0) + back) / net.referenceDensity;
    addPassage(net, flux, k, net.pathAt.a[p]!, net.pathAt.b[p]!, forward, net.pass[p * net.count + k]!, c);
    addPassage(net, flux, k, net.pathAt.b[p]!, net.pathAt.a[p]!, backward, net.pass[p * net.count + k]!, c);
  }
  const mixing = frozen ? heat.frozenExchangeFlow : heat.exchangeFlow;
  for (let i = 0; i < mixing.length; i += 1) {
    addPassage(net, flux, k, net.exchangeAt.a[i]!, net.exchangeAt.b[i]!, mixing[i]!, 1, c);
    addPassage(net, flux, k, net.exchangeAt.b[i]!, net.exchangeAt.a[i]!, mixing[i]!, 1, c);
  }
  const [entering, leaving] = frozen ? [heat.frozenChangeIn, heat.frozenChangeOut] : [heat.changeIn, heat.changeOut];
  for (let i = 0; i < entering.length; i += 1) {
    const [zone, outer] = [net.changeAt.a[i]!, net.changeAt.b[i]!];
    addPassage(net, flux, k, outer, zone, entering[i]! / net.referenceDensity, 1, c);
    addPassage(net, flux, k, zone, outer, leaving[i]! / net.referenceDensity, 1, c);
  }
  addRecirculations(day, flux, k, c);
  addCarbon(day, flux, k, c, frozen);
}

function addPassage(
  net: TransportNetwork,
  flux: Float64Array,
  k: number,
  from: number,
  to: number,
  volume: number,
  pass: number,
  c: Float64Array,
): void {
  const outwards = from < net.solved;
  const inwards = to < net.solved;
  if (!outwards && !inwards) return;
  const leaving = volume * c[from * net.count + k]!;
  const arriving = pass * leaving;
  flux[FILTERED] = flux[FILTERED]! + leaving - arriving;
  if (outwards && !inwards) flux[TO_BOUNDARY] = flux[TO_BOUNDARY]! + arriving;
  if (!outwards && inwards) flux[TO_BOUNDARY] = flux[TO_BOUNDARY]! - leaving;
}

function addRecirculations(day: Day, flux: Float64Array, k: number, c: Float64Array): void {
  const net = day.plant.transport;
  for (let r = 0; r < net.recirculationFlow.length; r += 1) {
    const place = net.recirculationPlace[r]!;
    if (day.transport.recirculationOn[r] === 0 || place >= net.solved) continue;
    const passing = net.recirculationFlow[r]! * c[place * net.count + k]!;
    flux[FILTERED] = flux[FILTERED]! + net.recirculationEfficiency[r * net.count + k]! * passing;
  }
}

/** Carbon behind a filter catches from what passed it; on its way into a held zone it catches what would have crossed. */
function addCarbon(day: Day, flux: Float64Array, k: number, c: Float64Array, frozen: boolean): void {
  const { plant, air, heat, transport } = day;
  const net = plant.transport;
  net.carbon.forEach(({ contaminant, path, recirculation, efficiency }, l) => {
    if (contaminant !== k) return;
    const star = frozen ? transport.frozenCarbon[l]!.steepness * c[net.cells + l]! : transport.carbonStar[l]!;
    if (path >= 0) {
      const flow = (frozen ? heat.frozenFlow : air.flow)[path]! / net.referenceDensity;
      const [a, b] = [net.pathAt.a[path]!, net.pathAt.b[path]!];
      const [from, to] = flow >= 0 ? [a, b] : [b, a];
      if (from >= net.solved && to >= net.solved) return;
      const arriving = net.pass[path * net.count + k]! * c[from * net.count + k]!;
      const caught = Math.abs(flow) * efficiency * (arriving - star);
      flux[FILTERED] = flux[FILTERED]! + caught;
      if (to >= net.solved) flux[TO_BOUNDARY] = flux[TO_BOUNDARY]! - caught;
      return;
    }
    const place = net.recirculationPlace[recirculation]!;
    if (transport.recirculationOn[recirculation] === 0 || place >= net.solved) return;
    const passes = 1 - net.recirculationEfficiency[recirculation * net.count + k]!;
    const passing = net.recirculationFlow[recirculation]!;
    flux[FILTERED] = flux[FILTERED]! + passing * efficiency * (passes * c[place * net.count + k]! - star);
  });
}

export interface ContaminantSums {
  readonly emitted: number;
  readonly deposited: number;
  readonly coagulated: number;
  readonly filtered: number;
  readonly toBoundary: number;
  readonly moved: number;
}

export function contaminantSums({ sum, moved }: ContaminantBook, k: number): ContaminantSums {
  const of = (kind: number): number => sum[k * KINDS + kind]!;
  return {
    emitted: of(EMITTED),
    deposited: of(DEPOSITED),
    coagulated: of(COAGULATED),
    filtered: of(FILTERED),
    toBoundary: of(TO_BOUNDARY),
    moved: moved[k]!,
  };
}
