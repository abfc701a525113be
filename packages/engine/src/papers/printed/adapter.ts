// From one section to another without a step: round to square, wide to narrow. The wide end stands on the bed.

import { gradualContractionLoss, gradualExpansionLoss } from '@stillair/physics';
import type { CabinetPath } from '../../cabinet/cabinet.ts';
import { type End, facing } from './ends.ts';
import { insertPart } from './path-edit.ts';
import type { AirLoss, PrintedPart } from './printed-part.ts';
import { between, betweenVolume, cut, type Flat, joined, outlineArea, placed, prism } from './shape.ts';

/** Least length of the change of section, mm. */
const LEAST = 20;

export interface Joint {
  readonly path: string;
  /** Index of the part behind the joint in the cabinet's path. */
  readonly at: number;
  /** In the direction of the air. */
  readonly before: End;
  readonly behind: End;
  readonly names: readonly [string, string];
  readonly bay: string | undefined;
}

export function adapter(joint: Joint, path: CabinetPath): PrintedPart {
  const [one, other] = [facing(joint.before), facing(joint.behind)];
  const widens = outlineArea(one.opening) < outlineArea(other.opening);
  const low = widens ? other : one;
  const high = facing(widens ? joint.before : joint.behind, true);
  // No wall leans by more than 45 degrees, so that nothing needs support: as high as the farthest corner comes in.
  const height = Math.max(LEAST, Math.ceil(farthest(low.walled, high.walled)));
  const body = cut(
    between(low.walled, 0, high.walled, height),
    between(low.opening, 0, high.opening, height),
    ...high.pilots.map((hole) => prism(hole, height - high.bite, height)),
  );
  const shell =
    betweenVolume(low.walled, high.walled, height) -
    betweenVolume(low.opening, high.opening, height) -
    high.bite * high.pilots.reduce((sum, hole) => sum + outlineArea(hole), 0);
  const total = low.length + height + high.length;
  return {
    id: `${joint.path}-adapter-${joint.at}`,
    title: `adapter of ${joint.path}: ${joint.names[0]} to ${joint.names[1]}`,
    count: 1,
    shape: joined(low.piece, placed(body, [0, 0, low.length]), placed(high.piece, [0, 0, low.length + height])),
    size: [Math.max(low.width, high.width), Math.max(low.depth, high.depth), total],
    volume: low.volume + shell + high.volume,
    // Measured across a wall that leans by 45 degrees.
    thinnest: 2 * Math.SQRT1_2,
    why: `leads the air from ${one.words} to ${other.words} without a step`,
    sizedFrom: [one.words, other.words],
    lies: `${low.words} on the bed, ${total} mm high, without support: no wall leans by more than 45 degrees`,
    check: ['measure the pipe inside before printing: sizes are nominal', 'tape or gasket at both ends'],
    ...(joint.bay === undefined ? {} : { bay: joint.bay }),
    loss: lossOf(joint, path, [one.opening, other.opening], height),
  };
}

/** How far the outline that is wider must come in at most, going straight towards the middle. */
function farthest(low: readonly Flat[], high: readonly Flat[]): number {
  const reach = (outline: readonly Flat[]): number => Math.max(...outline.map(([x, y]) => Math.hypot(x, y)));
  const least = (outline: readonly Flat[]): number => {
    const [dx, dy] = [Math.max(...outline.map(([x]) => x)), Math.max(...outline.map(([, y]) => y))];
    return Math.min(dx, dy);
  };
  return Math.max(reach(low) - least(high), reach(high) - least(low), 0);
}

function lossOf(
  { path: id, at }: Joint,
  path: CabinetPath,
  [from, to]: readonly [readonly Flat[], readonly Flat[]],
  height: number,
): AirLoss {
  const [first, second] = [outlineArea(from), outlineArea(to)];
  const [narrow, wide] = [Math.min(first, second), Math.max(first, second)];
  const diameter = (area: number): number => Math.sqrt((4 * area) / Math.PI);
  const angle = 2 * Math.atan((diameter(wide) - diameter(narrow)) / 2 / height);
  const widens = first < second;
  const factor = (widens ? gradualExpansionLoss : gradualContractionLoss)(narrow / wide, angle);
  return {
    factor,
    area: narrow / 1e6,
    formula: widens
      ? 'K = 2.6 sin(a/2) (1 - A1/A2)² up to 45 degrees, (1 - A1/A2)² beyond'
      : 'K = 0.8 sin(a/2) (1 - A2/A1) up to 45 degrees, 0.5 √sin(a/2) (1 - A2/A1) beyond',
    source: 'Crane Technical Paper 410 (1976), A-26, from memory; as of a cone between circles of the same areas',
    edits: [
      insertPart(id, path, at, {
        adapter: 'cone',
        loss: Math.round(1000 * factor) / 1000,
        size: `${Math.round(10 * diameter(narrow)) / 10} mm round`,
      }),
    ],
  };
}
