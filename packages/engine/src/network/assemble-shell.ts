// Boards, panes and partitions: nodes at both surfaces, films that know convection only, radiation through each bay's own
// mean radiant node. The films, not the boards, decide the loss, so each is named.

import { airLayerResistance } from '@stillair/physics';
import type { Build, Cabinet, Face, FaceName } from '../cabinet/cabinet.ts';
import { type Piece, piecesOf } from '../cabinet/geometry.ts';
import { ROOM } from './assemble-room.ts';
import type { BayPlaces } from './assembly.ts';
import { addToEnclosure, type Draft } from './draft.ts';
import { foldSkins } from './fold-skins.ts';

/** A sheet whose conductance is above this has one temperature: W/(m²K); films are 5 to 12. */
const THIN = 100;
/** Boards above this take two slices, m: two nodes are within 2 % after 5 minutes, three (as here) within 4 % after 1. */
const THICK = 0.009;
/** From a back face through a room wall or floor that it touches to the room's temperature, m²K/W: judgement, 0.15 to 0.5. */
const BEHIND = 0.25;
/** Two films between which a given U-value is stated, m²K/W: ISO 6946, horizontal flow, both sides indoors. */
const RATED_FILMS = 0.26;

interface Side {
  readonly zone: string;
  readonly enclosure: string;
}

/** All surfaces of all bays. Returns nothing: walls, films and enclosures go into the draft. */
export function assembleShell(
  draft: Draft,
  cabinet: Cabinet,
  bays: Readonly<Record<string, BayPlaces>>,
  start: number,
): void {
  for (const piece of piecesOf(cabinet)) {
    for (const part of byZone(piece, bays[piece.bay]!)) {
      if (piece.behind.kind === 'outside') outerBoard(draft, cabinet, part, start);
      else partition(draft, cabinet, bays, part, piece.behind.bay, start);
    }
  }
}

interface ZonePiece extends Piece {
  readonly zone: string;
  readonly suffix: string;
}

/** An upright piece of a bay with two zones is cut at their border; a level one belongs to the zone it closes. */
function byZone(piece: Piece, bay: BayPlaces): ZonePiece[] {
  const [low, high] = bay.zones;
  if (high === undefined) return [{ ...piece, zone: low!, suffix: '' }];
  if (piece.from === piece.to) {
    const zone = piece.from >= bay.split ? high : low!;
    return [{ ...piece, zone, suffix: '' }];
  }
  const cut = (from: number, to: number, zone: string, suffix: string): ZonePiece[] =>
    to - from > 1e-9 ? [{ ...piece, from, to, area: piece.width * (to - from), zone, suffix }] : [];
  return [
    ...cut(piece.from, Math.min(piece.to, bay.split), low!, '.low'),
    ...cut(Math.max(piece.from, bay.split), piece.to, high, '.high'),
  ];
}

function outerBoard(draft: Draft, cabinet: Cabinet, piece: ZonePiece, start: number): void {
  const { bay, face, suffix, zone } = piece;
  const door = Object.entries(cabinet.doors).find(([, { face: of, bays }]) => of === face && bays.includes(bay));
  const build = door === undefined ? cabinet.faces[face].build : door[1].build;
  const part = door === undefined ? `faces.${face}` : `doors.${door[0]}`;
  const name = uniqueName(draft, `${bay}.${face}${suffix}`);
  const sheet = addSheet(draft, name, { a: zone, b: ROOM }, build, piece.area, part, cabinet, start);
  insideFilm(draft, cabinet, piece, { zone, enclosure: bay }, sheet.inner, build.emissivityInside);
  draft.surfaces.push({ node: sheet.inner, zone, bay, part, area: piece.area });
  outsideFilm(draft, cabinet, piece, sheet.outer, build, door === undefined ? cabinet.faces[face] : undefined);
}

/** Towards the free room: convection and radiation; against a wall or floor: through the gap and what stands behind. */
function outsideFilm(
  draft: Draft,
  cabinet: Cabinet,
  piece: Piece,
  node: string,
  build: Build,
  face: Face | undefined,
): void {
  if (face !== undefined && face.against !== 'room' && face.gap < 0.05) {
    const gap = face.gap <= 0 ? 0 : airLayerResistance(face.gap, 'horizontal');
    draft.conductances.push({ a: node, b: ROOM, conductance: piece.area / (gap + BEHIND) });
    return;
  }
  const level = piece.from === piece.to;
  draft.convections.push({
    surface: node,
    air: ROOM,
    area: piece.area,
    faces: looks(piece.face, 'outside'),
    length: level ? levelLength(piece.width, cabinet.inside.depth) : cabinet.inside.height,
    factor: cabinet.factors.outsideFilm,
    forced: [],
  });
  draft.radiation.push({ a: node, b: ROOM, area: piece.area, emissivity: build.emissivityOutside, factor: 1 });
}

function insideFilm(draft: Draft, cabinet: Cabinet, piece: Piece, side: Side, node: string, emissivity: number): void {
  const level = piece.from === piece.to;
  draft.convections.push({
    surface: node,
    air: side.zone,
    area: piece.area,
    faces: looks(piece.face, 'inside'),
    length: level ? levelLength(piece.width, cabinet.inside.depth) : piece.to - piece.from,
    factor: cabinet.factors.insideFilm,
    forced: [],
  });
  addToEnclosure(draft, side.enclosure, node, piece.area, emissivity);
}

/** A board between two bays, made once: from the lower or left bay. Upright boards are cut where either side's zones change. */
function partition(
  draft: Draft,
  cabinet: Cabinet,
  bays: Readonly<Record<string, BayPlaces>>,
  piece: ZonePiece,
  other: string,
  start: number,
): void {
  if (piece.face === 'left' || piece.face === 'bottom') return; // the neighbour's right or top makes it
  const index = cabinet.partitions.findIndex(({ bays: pair }) => pair.includes(piece.bay) && pair.includes(other));
  const build = index < 0 ? cabinet.faces.bottom.build : cabinet.partitions[index]!.build;
  const part = index < 0 ? 'faces.bottom' : `partitions.${index}`;
  const far = bays[other]!;
  const strips =
    piece.from === piece.to
      ? [{ ...piece, far: far.zones[0]! }]
      : byZone({ ...piece, bay: other }, far).map((strip) => ({ ...strip, far: strip.zone }));
  for (const strip of strips) {
    const name = uniqueName(draft, `${piece.bay}.${piece.face}${piece.suffix}`);
    const cut: Piece = { ...piece, from: strip.from, to: strip.to, area: strip.area };
    const sheet = addSheet(draft, name, { a: piece.zone, b: strip.far }, build, strip.area, part, cabinet, start);
    insideFilm(draft, cabinet, cut, { zone: piece.zone, enclosure: piece.bay }, sheet.inner, build.emissivityInside);
    const back: FaceName = piece.face === 'top' ? 'bottom' : 'left';
    insideFilm(
      draft,
      cabinet,
      { ...cut, face: back },
      { zone: strip.far, enclosure: other },
      sheet.outer,
      build.emissivityOutside,
    );
    draft.surfaces.push({ node: sheet.inner, zone: piece.zone, bay: piece.bay, part, area: strip.area });
    draft.surfaces.push({ node: sheet.outer, zone: strip.far, bay: other, part, area: strip.area });
  }
}

/**
 * A sheet of a build: one node when it is thin, else nodes at both faces and between slices. `overrides` may give the U-value of
 * the part (`faces.left`) that it belongs to.
 */
export function addSheet(
  draft: Draft,
  name: string,
  between: { readonly a: string; readonly b: string },
  build: Build,
  area: number,
  path: string,
  cabinet: Cabinet,
  start: number,
): { inner: string; outer: string } {
  const resistance = build.layers.reduce((sum, { thickness, conductivity }) => sum + thickness / conductivity, 0);
  const given = cabinet.overrides[`${path}.uValue`] ?? build.uValue;
  if (given !== undefined && !draft.overridesUsed.includes(`${path}.uValue`))
    draft.overridesUsed.push(`${path}.uValue`);
  // A U-value scales the resistances and keeps the heat capacity; one above what films alone allow leaves a perfect conductor.
  const rated = given === undefined ? 1 : Math.max((1 / given - RATED_FILMS) / resistance, 1e-3);
  const scale = rated / Math.max(cabinet.factors.wallLoss, 1e-3);
  const thin = build.layers.length === 1 && 1 / (resistance * scale) > THIN;
  if (thin) {
    const { thickness, density, heatCapacity } = build.layers[0]!;
    draft.nodes.push({ name, heatCapacity: thickness * density * heatCapacity * area, initial: start });
    return { inner: name, outer: name };
  }
  const sliced = build.layers.map((layer) => ({
    thickness: layer.thickness,
    conductivity: layer.conductivity / scale,
    density: layer.density,
    heatCapacity: layer.heatCapacity,
    nodes: layer.thickness >= THICK && layer.density > 200 ? 2 : 1,
  }));
  const layers = foldSkins(sliced);
  draft.walls.push({ name, ...between, area, layers, grid: 'faces', initial: start });
  const slices = layers.reduce((sum, { nodes }) => sum + nodes, 0);
  return { inner: `${name}.1`, outer: `${name}.${slices + 1}` };
}

function looks(face: FaceName, side: 'inside' | 'outside'): 'vertical' | 'up' | 'down' {
  if (face !== 'top' && face !== 'bottom') return 'vertical';
  return (face === 'bottom') === (side === 'inside') ? 'up' : 'down';
}

/** Area over perimeter of a rectangle: the length of horizontal-plate correlations. */
export function levelLength(width: number, depth: number): number {
  return (width * depth) / (2 * (width + depth));
}

function uniqueName(draft: Draft, wanted: string): string {
  const taken = (name: string) =>
    draft.walls.some((wall) => wall.name === name) || draft.nodes.some((node) => node.name === name);
  if (!taken(wanted)) return wanted;
  for (let number = 2; ; number++) if (!taken(`${wanted} ${number}`)) return `${wanted} ${number}`;
}
