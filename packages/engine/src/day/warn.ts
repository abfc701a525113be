// Warnings that a person should hear once a run.

import { FIXED } from './air-network.ts';
import type { Day } from './day.ts';
import { crossings } from './fan-branch.ts';
import { branchResistance } from './path-flow.ts';

function warnOnce(day: Day, code: Day['warnings'][number]['code'], what: string, message: string): void {
  if (day.warnings.some((known) => known.code === code && known.what === what)) return;
  day.warnings.push({ code, what, message });
}

/** Fixed flows that found no way out of a closed part of the network. */
export function warnOfHeldBack(day: Day): void {
  for (const p of day.air.heldBack) {
    const { name } = day.plant.network.paths[p]!;
    warnOnce(
      day,
      'held-back',
      name,
      `The fixed flow of "${name}" has no way on: the zones it serves have no open path to a fixed pressure. ` +
        'Only what other fixed flows take away again passes.',
    );
  }
}

/** Fans whose curve meets the resistance of their path in several flows at the present pressure difference. */
export function warnOfPoints(day: Day): void {
  const { air, plant } = day;
  for (let p = 0; p < plant.air.pathCount; p += 1) {
    if (!air.curves[p]!.rising || air.open[p] === 0 || plant.air.kind[p] === FIXED) continue;
    const a = plant.air.from[p]!;
    const b = plant.air.to[p]!;
    const resistance = branchResistance(plant.air, air, p);
    const drive = air.pressure[a]! - air.pressure[b]! + air.head[p]! + resistance.scale * resistance.curve.p0;
    const points = crossings(resistance, drive);
    if (points.length < 2) continue;
    const { name } = plant.network.paths[p]!;
    const list = points.map(({ flow, stable }) => `${(3600 * flow).toFixed(1)} m3/h${stable ? '' : ' (unstable)'}`);
    warnOnce(
      day,
      'several-operating-points',
      name,
      `The fan of "${name}" can run at ${list.join(', ')}. It was taken to run where it ran before, at first at the largest flow.`,
    );
  }
}
