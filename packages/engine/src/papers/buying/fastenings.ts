// Small things that are forgotten: screws of fans, hinges, pins of shelves, and what cords pass through. Counts come from the file;
// sizes are common practice without a printed source.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { BoardPart } from '../../joinery/board-part.ts';
import { constructionOf } from '../../joinery/construction.ts';
import { standsAtAnEnd } from '../printed/called-for.ts';
import { mm } from '../printed/ends.ts';
import { fanEnd } from '../printed/fan-plate.ts';
import type { Thing } from './things.ts';

/** Screws through the corner of an open frame (4 mm) and the printed plate or flange (4 mm), with washer and nut. */
const FAN_SCREW = 16;
/** Corners of a frame, and of the plate that carries it. */
const CORNERS = 4;

export interface Fastenings {
  readonly things: readonly Thing[];
  /** What cannot be counted, and why. */
  readonly open: readonly string[];
}

export function fastenings(cabinet: Cabinet): Fastenings {
  const fans = fanScrews(cabinet);
  // A carcass that is bought ready comes with what holds it together.
  const boards = cabinet.costs.carcass === undefined ? constructionOf(cabinet).boards : [];
  return {
    things: [...fans.things, ...hinges(cabinet, boards), ...pins(boards), ...bushings(cabinet)],
    open: fans.open,
  };
}

const thing = (what: string, count: number, where: readonly string[]): Thing => ({
  what,
  count,
  where: [...new Set(where)],
  parts: [],
  group: 'fastenings',
});

function fanScrews({ paths }: Cabinet): Fastenings {
  const bolts = new Map<string, string[]>();
  const wood: string[] = [];
  const open: string[] = [];
  for (const [id, path] of Object.entries(paths))
    for (const [at, part] of path.parts.entries()) {
      if (part.part !== 'fan') continue;
      const end = part.kind.startsWith('axial') ? fanEnd(mm(part.diameter)) : undefined;
      if (end === undefined) {
        open.push(`screws of the fan of ${id}, ${part.kind}: its holes are of no trade size; its papers say`);
        continue;
      }
      const what = `screw ${end.screw} x ${FAN_SCREW} with washer and nut, for an axial fan of ${end.frame} mm (where its corners are closed, as much longer as it is deep)`;
      bolts.set(what, [...(bolts.get(what) ?? []), id]);
      if (standsAtAnEnd(path, at)) wood.push(id);
    }
  return {
    things: [
      ...[...bolts].map(([what, where]) => thing(what, CORNERS * where.length, where)),
      ...(wood.length === 0 ? [] : [thing('wood screw 4 x 16, for the plates of fans', CORNERS * wood.length, wood)]),
    ],
    open,
  };
}

/** Cup hinges where the leaf takes cups; else hinges or clamps that are made for its material. */
function hinges(cabinet: Cabinet, boards: readonly BoardPart[]): Thing[] {
  const kinds = new Map<string, { count: number; where: string[] }>();
  for (const id of Object.keys(cabinet.doors)) {
    const hinge = cabinet.fit.doors[id]?.hinge ?? 'left';
    const leaf = boards.find(({ of }) => of === `doors.${id}`);
    const known = cabinet.structure.hinges[id];
    if (hinge === 'slides' || hinge === 'lifts off' || leaf === undefined || known === undefined) continue;
    const cups = leaf.cuts.filter(({ purpose }) => purpose === 'cup').length;
    const what =
      cups > 0
        ? 'cup hinge of 35 mm with its plate'
        : `surface hinge or clamp for a leaf of ${leaf.board} ${Math.round(leaf.nominal * 1e4) / 10} mm`;
    const before = kinds.get(what) ?? { count: 0, where: [] };
    kinds.set(what, { count: before.count + (cups > 0 ? cups : known.count), where: [...before.where, id] });
  }
  return [...kinds].map(([what, { count, where }]) => thing(what, count, where));
}

/** One for each hole that is drilled for it. */
function pins(boards: readonly BoardPart[]): Thing[] {
  const holes = boards.flatMap(({ cuts }) =>
    cuts.flatMap(({ purpose, shape, what }) =>
      purpose === 'pin' && shape.kind === 'round' ? [{ size: Math.round(shape.diameter * 1e4) / 10, what }] : [],
    ),
  );
  return [...new Set(holes.map(({ size }) => size))].map((size) => {
    const alike = holes.filter((hole) => hole.size === size);
    return thing(
      `shelf pin ${size} mm`,
      alike.length,
      alike.map(({ what }) => what),
    );
  });
}

/** Cords of machines whose strip is outside of the cabinet leave their bay through its wall. */
function bushings({ machines, power: { strips } }: Cabinet): Thing[] {
  const left = Object.values(strips)
    .filter(({ where }) => where === 'outside')
    .flatMap(({ feeds }) => feeds.flatMap((user) => machines[user]?.bay ?? []));
  const bays = [...new Set(left)];
  return bays.length === 0
    ? []
    : [
        thing(
          'bushing or brush for a hole of 60 mm that a plug passes (80 mm for large plugs); the file does not place it: each gap that it leaves is a leak',
          bays.length,
          bays,
        ),
      ];
}
