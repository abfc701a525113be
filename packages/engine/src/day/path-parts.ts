// What the air meets on each path: the pressure difference at its height, the volume flow, and the share of every part in series.

import type { AirPath, FanPath, Network } from '../network/network.ts';
import { addFans, fanPressure, newFanCurveSum } from './fan-curve.ts';

/** The air of a network at one moment. */
export interface AirMoment {
  readonly network: Network;
  /** K, by zone. */
  readonly temperature: (zone: string) => number;
  /** Pa at the zone's own height. */
  readonly pressure: (zone: string) => number;
  /** kg/s */
  readonly flow: (path: string) => number;
  /** Share of full speed, 0 when off. */
  readonly speed: (fan: string) => number;
}

export function densityOf({ network, temperature }: AirMoment, zone: string): number {
  const { density, constants } = network;
  return density.model === 'constant'
    ? density.value
    : constants.atmosphere / (constants.gasConstant * temperature(zone));
}

/** Pa at the path's height, from `from` to `to`. */
export function pressureDifference(moment: AirMoment, path: AirPath): number {
  const at = (name: string): number => {
    const zRef = moment.network.zones.find((zone) => zone.name === name)!.zRef;
    return moment.pressure(name) - densityOf(moment, name) * moment.network.constants.gravity * (path.z - zRef);
  };
  return at(path.from) - at(path.to);
}

/** m³/s at the density where the air comes from. */
export function volumeFlow(moment: AirMoment, path: AirPath): number {
  const flow = moment.flow(path.name);
  return flow / densityOf(moment, flow >= 0 ? path.from : path.to);
}

/**
 * Pressure lost in every part of a fan path, Pa, by the names of the file, negative where the air runs backwards. A running fan
 * counts with what it gains; a stopped one with what its rotor loses. A single fan is called `fan`.
 */
export function partPressures(moment: AirMoment, path: FanPath): Readonly<Record<string, number>> {
  const { network, speed, flow } = moment;
  const rhoUp = densityOf(moment, flow(path.name) >= 0 ? path.from : path.to);
  const Q = volumeFlow(moment, path);
  const square = Q * Math.abs(Q);
  const minorLoss = (loss: number, area: number): number => ((loss * rhoUp) / (2 * area * area)) * square;
  const scale = network.fanDensityScaling ? densityOf(moment, path.from) / network.constants.referenceDensity : 1;
  const fans = path.fans.map((fan): readonly [string, number] => {
    const name = path.fans.length === 1 ? 'fan' : fan.name;
    if (speed(fan.name) === 0) {
      const { linear, quadratic, minor } = fan.stopped;
      const losses = minor.reduce((sum, { loss, area }) => sum + minorLoss(loss, area), 0);
      return [name, linear * Q + quadratic * square + losses];
    }
    const curve = newFanCurveSum([fan]);
    addFans(curve, [fan], Float64Array.of(speed(fan.name)), 0);
    return [name, scale * fanPressure(curve, Q)];
  });
  return Object.fromEntries([
    ...fans,
    ...path.resistances.map(({ name, linear, quadratic }) => [name, linear * Q + quadratic * square] as const),
    ...path.minor.map(({ name = 'K', loss, area }) => [name, minorLoss(loss, area)] as const),
  ]);
}
