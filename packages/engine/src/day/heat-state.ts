// What of the heat network changes during a day: what is switched on, and what the last evaluation found.

import type { HeatNetwork } from './heat-network.ts';

export interface HeatState {
  /** W/K of conductions, 0 while inactive. */
  readonly conductance: Float64Array;
  /** W into each slot that does not change between switches. */
  readonly steady: Float64Array;
  /** Sources that follow a course: slot, W and W/s at the last switch. */
  courseCount: number;
  readonly courseSlot: Int32Array;
  readonly courseStart: Float64Array;
  readonly courseRate: Float64Array;
  courseTime: number;
  /** Σh³ of the forced parts, by convection. */
  readonly forced: Float64Array;
  /** 1 while active, by exchange. */
  readonly exchangeOn: Uint8Array;
  /** Matrix of the conductions alone. */
  readonly conductionMatrix: Float64Array;
  /** K/s of the fixed zones, by slot - firstFixed. */
  readonly fixedRate: Float64Array;
  fixedMoves: boolean;

  /** Found by the last evaluation: W/K of convections, W/K of exchanges' mixing, m³/s of exchanges. */
  readonly filmConductance: Float64Array;
  readonly filmHeat: Float64Array;
  readonly exchangeFlow: Float64Array;
  /** kg/s into the zone from outdoors, and out. */
  readonly changeIn: Float64Array;
  readonly changeOut: Float64Array;
  /** Slopes d(heat)/d(ΔT) that the matrix uses, W/K. */
  readonly filmSlope: Float64Array;
  readonly exchangeSlope: Float64Array;

  /** Coefficients frozen for the step, as the matrix has them. */
  readonly frozenFlow: Float64Array;
  readonly frozenCounter: Float64Array;
  readonly frozenAlong: Float64Array;
  readonly frozenAgainst: Float64Array;
  readonly frozenRadiationA: Float64Array;
  readonly frozenRadiationB: Float64Array;
  readonly frozenFilm: Float64Array;
  readonly frozenExchange: Float64Array;
  readonly frozenExchangeFlow: Float64Array;
  readonly frozenChangeIn: Float64Array;
  readonly frozenChangeOut: Float64Array;
  /** Rows of the beds before they were held. */
  readonly frozenBedRows: readonly Float64Array[];
  readonly matrix: Float64Array;
}

export function newHeatState(heat: HeatNetwork, paths: number, sources: number): HeatState {
  const { layout } = heat;
  const ducts = heat.carried.count;
  const films = heat.convection.count;
  const exchanges = heat.exchange.count;
  const changes = heat.change.count;
  const radiations = heat.radiation.count;
  return {
    conductance: heat.conductance.slice(),
    steady: new Float64Array(layout.slots),
    courseCount: 0,
    courseSlot: new Int32Array(sources),
    courseStart: new Float64Array(sources),
    courseRate: new Float64Array(sources),
    courseTime: 0,
    forced: new Float64Array(films),
    exchangeOn: new Uint8Array(exchanges),
    conductionMatrix: new Float64Array(layout.valueCount),
    fixedRate: new Float64Array(layout.firstSensor - layout.firstFixed),
    fixedMoves: false,
    filmConductance: new Float64Array(films),
    filmHeat: new Float64Array(films),
    exchangeFlow: new Float64Array(exchanges),
    changeIn: new Float64Array(changes),
    changeOut: new Float64Array(changes),
    filmSlope: new Float64Array(films),
    exchangeSlope: new Float64Array(exchanges),
    frozenFlow: new Float64Array(paths),
    frozenCounter: new Float64Array(paths),
    frozenAlong: new Float64Array(ducts),
    frozenAgainst: new Float64Array(ducts),
    frozenRadiationA: new Float64Array(radiations),
    frozenRadiationB: new Float64Array(radiations),
    frozenFilm: new Float64Array(films),
    frozenExchange: new Float64Array(exchanges),
    frozenExchangeFlow: new Float64Array(exchanges),
    frozenChangeIn: new Float64Array(changes),
    frozenChangeOut: new Float64Array(changes),
    frozenBedRows: heat.bedRows.map(({ columns }) => new Float64Array(columns.length)),
    matrix: new Float64Array(layout.valueCount),
  };
}
