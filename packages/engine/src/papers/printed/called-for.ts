// Which printed parts a cabinet calls for: for each air path, sensor, lamp, camera arm and cable channel, those that serve it.

import type { Cabinet, CabinetPath, PathPart } from '../../cabinet/cabinet.ts';
import type { Finding } from '../../judge/finding.ts';
import { bayOfEnd, OUTSIDE } from '../../trades/plant.ts';
import { adapter } from './adapter.ts';
import { bend } from './bend.ts';
import { cameraArm, lampBracket } from './brackets.ts';
import { cableCorner } from './cable-corner.ts';
import { cassette } from './cassette.ts';
import { type End, endOf, sameEnd, sectionWords } from './ends.ts';
import { fanPlate } from './fan-plate.ts';
import { grille } from './grille.ts';
import { labyrinth } from './labyrinth.ts';
import type { NotDrawn, PrintedPart } from './printed-part.ts';
import { sensorClip } from './sensor-clip.ts';

export interface CalledFor {
  readonly parts: readonly PrintedPart[];
  readonly notDrawn: readonly NotDrawn[];
}

export function partsCalledFor(cabinet: Cabinet, findings: readonly Finding[] = []): CalledFor {
  const parts: PrintedPart[] = [];
  const notDrawn: NotDrawn[] = [];
  for (const [id, path] of Object.entries(cabinet.paths)) {
    const bay = bayOfEnd(cabinet, path.from) ?? bayOfEnd(cabinet, path.to);
    const told = ofPath(id, path, bay, findings);
    parts.push(...told.parts);
    notDrawn.push(...told.notDrawn);
  }
  for (const [id, sensor] of Object.entries(cabinet.sensors)) parts.push(sensorClip(id, sensor));
  for (const [id, lamp] of Object.entries(cabinet.light.lamps)) parts.push(lampBracket(id, lamp));
  for (const [id, fitting] of Object.entries(cabinet.fittings)) {
    const bay = bayOfEnd(cabinet, fitting.where);
    if (fitting.arm !== undefined) parts.push(cameraArm(id, fitting.arm, bay));
    if (fitting.what !== 'cable channel') continue;
    if (fitting.size === undefined)
      notDrawn.push({ what: `corner of the cable channel ${id}`, missing: `give fittings.${id}.size` });
    else parts.push(...cableCorner(id, fitting, bay));
  }
  return { parts, notDrawn };
}

function ofPath(id: string, path: CabinetPath, bay: string | undefined, findings: readonly Finding[]): CalledFor {
  const parts: PrintedPart[] = [];
  const notDrawn: NotDrawn[] = [];
  let last: { readonly end: End; readonly name: string } | undefined;
  for (const [at, part] of path.parts.entries()) {
    const end = endOf(part);
    if (end !== undefined && 'missing' in end) {
      notDrawn.push({ what: `what holds ${nameOf(part)} of ${id}`, missing: end.missing });
      last = undefined;
      continue;
    }
    if (part.part === 'hole' && opensOutside(path)) parts.push(...overHole(id, path, part, bay, findings));
    if (end === undefined) continue;
    if (end.shape === 'fan' && standsAtAnEnd(path, at)) parts.push(fanPlate(id, end, bay));
    // What lies on the one before it, face on face, is held with it.
    if (end.shape === 'face' && (last === undefined || !sameEnd(last.end, end)))
      parts.push(...cassette(id, path, at, end.face, heldFrom(path, at, end), bay));
    if (part.part === 'loss') parts.push(bend(id, path, at, part, bay));
    const names = [last?.name ?? '', nameOf(part)] as const;
    if (last !== undefined && !sameEnd(last.end, end))
      parts.push(adapter({ path: id, at, before: last.end, behind: end, names, bay }, path));
    last = { end, name: nameOf(part) };
  }
  return { parts, notDrawn };
}

/** Nothing lies between it and the board but what it carries itself: a guard, a flap. */
export function standsAtAnEnd({ parts }: CabinetPath, at: number): boolean {
  const free = (one: PathPart): boolean =>
    one.part === 'hole' || one.part === 'flap' || (one.part === 'loss' && endOf(one) === undefined);
  return parts.slice(0, at).every(free) || parts.slice(at + 1).every(free);
}

const opensOutside = ({ from, to }: CabinetPath): boolean => OUTSIDE.includes(from) || OUTSIDE.includes(to);

function overHole(
  id: string,
  path: CabinetPath,
  { section, count }: Extract<PathPart, { part: 'hole' }>,
  bay: string | undefined,
  findings: readonly Finding[],
): PrintedPart[] {
  const covered = path.parts.some((part) => part.part === 'loss' && /^(?:grille|guard|louvre|muffler)/.test(part.what));
  if (covered) return [];
  const loud = findings.some(({ trade, verdict }) => trade === 'sound' && (verdict === 'fails' || verdict === 'tight'));
  return [grille(id, path, section, count, bay), ...(loud && count === 1 ? labyrinth(id, path, section, bay) : [])];
}

/** Faces of one size that follow one another are held in one cassette. */
function heldFrom({ parts }: CabinetPath, at: number, end: End): readonly string[] {
  const held: string[] = [];
  for (const part of parts.slice(at)) {
    const own = endOf(part);
    if (own === undefined || 'missing' in own || own.shape !== 'face' || !sameEnd(own, end)) break;
    held.push(nameOf(part));
  }
  return held;
}

function nameOf(part: PathPart): string {
  switch (part.part) {
    case 'hole':
      return `hole ${sectionWords(part.section)}`;
    case 'duct':
      return `duct ${Math.round(part.diameter * 1000)} mm`;
    case 'loss':
      return part.what;
    case 'flap':
      return 'flap';
    default:
      return part.kind;
  }
}
