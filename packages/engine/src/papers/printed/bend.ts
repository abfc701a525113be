// A bend whose section stays the same all the way round, with a spigot at each end.

import { bendLoss, ductFriction } from '@stillair/physics';
import type { CabinetPath, PathPart } from '../../cabinet/cabinet.ts';
import { facing, mm } from './ends.ts';
import { setLoss } from './path-edit.ts';
import { SPIGOT, WALL } from './practice.ts';
import type { PrintedPart } from './printed-part.ts';
import { cut, type Flat, joined, outlineArea, placed, prism, turnedVolume } from './shape.ts';

/** Steps of a quarter turn. */
const STEPS = 24;
/** Reynolds number and roughness at which the friction of a bend is taken: a slow fan's air in printed plastic. */
const REYNOLDS = 2e4;
const ROUGHNESS = 0.002;

type Loss = Extract<PathPart, { part: 'loss' }>;

/** Radius of the middle line over the diameter: as tight as it may be without costing much, so that it fits a bed. */
const RATIO = 1;

export function bend(id: string, path: CabinetPath, at: number, part: Loss, bay: string | undefined): PrintedPart {
  const diameter = part.section?.shape === 'round' ? mm(part.section.diameter) : 2000 * Math.sqrt(part.area / Math.PI);
  const degrees = part.what.includes('45') ? 45 : 90;
  const radius = RATIO * diameter;
  const end = facing({ shape: 'pipe', diameter });
  const ring = (outline: readonly Flat[]): Flat[] => outline.map(([x, y]) => [x + radius, y]);
  const [outer, inner] = [ring(end.walled), ring(end.opening)];
  const turned = (outline: readonly Flat[]) => ({ kind: 'turned', outline, degrees, steps: STEPS }) as const;
  const half = Math.max(...end.walled.map(([, y]) => y));
  // A straight spigot at each end, tangent to the arc; the first points against y, the second on from where the arc ends.
  const spigot = cut(prism(end.walled, 0, SPIGOT), prism(end.opening, 0, SPIGOT));
  const turn = (degrees * Math.PI) / 180;
  const shape = joined(
    cut(turned(outer), turned(inner)),
    placed(spigot, [radius, 0, 0], [90, 0, 0]),
    placed(spigot, [radius * Math.cos(turn), radius * Math.sin(turn), 0], [-90, 0, degrees]),
  );
  const wall = outlineArea(end.walled) - outlineArea(end.opening);
  const factor = bendLoss(RATIO, ductFriction(REYNOLDS, ROUGHNESS), turn);
  const across = boxOf(radius, half, turn);
  return {
    id: `${id}-bend-${at}`,
    title: `bend of ${id}`,
    count: 1,
    // The arc's middle plane lies half its width above the bed.
    shape: placed(shape, [0, 0, half]),
    size: [across[0], across[1], 2 * half],
    volume: turnedVolume(outer, degrees, STEPS) - turnedVolume(inner, degrees, STEPS) + 2 * SPIGOT * wall,
    thinnest: WALL,
    why: `turns the air by ${degrees} degrees; its section is the same all the way`,
    sizedFrom: [
      `pipe of ${diameter} mm inside`,
      `${part.what}, printed with a middle line of ${RATIO} diameter; the edit puts its loss into the file`,
    ],
    lies: 'on its side, with support below and inside the arc; or cut along its middle plane and glued',
    check: ['measure the pipe inside before printing: sizes are nominal'],
    ...(bay === undefined ? {} : { bay }),
    loss: {
      factor,
      area: outlineArea(end.opening) / 1e6,
      formula: 'K = f a r/D + (0.10 + 2.4 f) s + 6.6 f (√s + s)/(r/D)^(4a/π), s = sin(a/2)',
      source: 'Rennels & Hudson (2012), ch. 15, from memory',
      edits: [setLoss(id, path, at, factor)],
    },
  };
}

/** Width and depth of the arc with its spigots. */
function boxOf(radius: number, half: number, turn: number): readonly [number, number] {
  const end = [radius * Math.cos(turn) - SPIGOT * Math.sin(turn), radius * Math.sin(turn) + SPIGOT * Math.cos(turn)];
  const reach = [half * Math.cos(turn), half * Math.sin(turn)];
  const low = Math.min(end[0]! - reach[0]!, radius - half);
  const high = radius + half;
  return [high - low, SPIGOT + Math.max(end[1]! + reach[1]!, (radius + half) * Math.sin(turn))];
}
