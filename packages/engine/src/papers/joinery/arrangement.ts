// The general arrangement: front, left side and plan round each other in first or third angle, then the front without its doors and
// a section through the middle, with the machines that stand in it.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { BoardPart } from '../../joinery/board-part.ts';
import { type Construction, constructionOf } from '../../joinery/construction.ts';
import type { Place, Triple } from '../../joinery/place.ts';
import { movedTo } from '../../trades/machine-solids.ts';
import { standingIn } from '../../trades/standing-machines.ts';
import { distinct, level, upright } from '../drawing/dimension.ts';
import { drawingScale } from '../drawing/scale.ts';
import { across, down, type Frame, ghost, rectangle, type Seen, seen, type View, views } from '../drawing/view.ts';
import { circle, box as frameBox, line, type Mark, outline, text } from '../frame/mark.ts';
import { type Area, drawingArea } from '../frame/page.ts';
import { brokenLines } from '../frame/text-width.ts';
import type { Angle, Paper, Part } from '../paper.ts';
import { JOINERS_CAUTIONS, mm } from './words.ts';

/** Room for dimensions left of a view, between views, and below each, mm. */
const LEFT = 19;
const BETWEEN = 15;
const BELOW = 24;
const ABOVE = 8;
/** Type of the titles of views, mm. */
const TITLE = 2.8;

export const arrangement: Paper = {
  id: 'arrangement',
  title: 'General arrangement',
  what: 'The whole cabinet from the front, from the left and from above, then without its doors and cut through the middle; machines in dash-dot-dot lines, in all the positions that they take.',
  cautions: JOINERS_CAUTIONS,
  make({ source: { cabinet }, format, angle }) {
    const construction = constructionOf(cabinet);
    const area = drawingArea(format);
    return {
      parts: [viewsSheet(cabinet, construction, area, angle), openSheet(cabinet, construction, area, angle)],
      missing: construction.problems,
      assumes: construction.assumes,
      rests: ['fit.tolerance', 'fit.machines'],
    };
  },
};

interface Hull {
  readonly from: Triple;
  readonly to: Triple;
}

function hullOf(boards: readonly BoardPart[]): Hull {
  const reach = (end: 'from' | 'to', at: 0 | 1 | 2): number =>
    (end === 'from' ? Math.min : Math.max)(...boards.map(({ place }) => place[end][at]));
  return {
    from: [reach('from', 0), reach('from', 1), reach('from', 2)],
    to: [reach('to', 0), reach('to', 1), reach('to', 2)],
  };
}

/** Feet below the corners. */
function feetOf(cabinet: Cabinet, hull: Hull): readonly Seen[] {
  const { count, size, height, inset } = cabinet.structure.feet;
  if (count === 0 || height <= 0) return [];
  const columns = Math.max(2, Math.round(count / 2));
  const [x0, x1] = [hull.from[0] + inset, hull.to[0] - inset - size];
  const [y0, y1] = [Math.max(0, hull.from[1]) + inset, hull.to[1] - inset - size];
  return Array.from({ length: columns }, (_, at) => x0 + (at * (x1 - x0)) / (columns - 1)).flatMap((x) =>
    [y0, y1].map(
      (y): Seen => ({
        place: { from: [x, y, hull.from[2] - height], to: [x + size, y + size, hull.from[2]] },
        line: 'outline',
      }),
    ),
  );
}

function boardSeen(board: BoardPart): Seen {
  return { place: board.place, line: 'outline', on: (frame) => holesOn(board, frame) };
}

/** Through holes of a board that is looked at square. */
function holesOn({ axes, place, cuts }: BoardPart, frame: Frame): readonly Mark[] {
  if (axes.t !== frame.view.away[0]) return [];
  const point = (u: number, v: number): Triple => {
    const at = (axis: 'x' | 'y' | 'z', index: 0 | 1 | 2): number =>
      axis === axes.u ? place.from[index] + u : axis === axes.v ? place.from[index] + v : place.from[index];
    return [at('x', 0), at('y', 1), at('z', 2)];
  };
  return cuts.flatMap(({ shape, depth }): Mark[] => {
    if (depth !== 'through') return [];
    if (shape.kind === 'round') {
      const at = point(...shape.at);
      return [circle([across(frame, at), down(frame, at)], Math.max(0.3, (shape.diameter * frame.factor) / 2))];
    }
    const { x, y, width, height } = rectangle(frame, { from: point(...shape.from), to: point(...shape.to) });
    return [frameBox(x, y, width, height)];
  });
}

interface Placed {
  readonly frame: Frame;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

function viewsSheet(cabinet: Cabinet, { boards }: Construction, area: Area, angle: Angle): Part {
  const hull = hullOf(boards);
  const [w, d, h] = [0, 1, 2].map((at) => hull.to[at as 0 | 1 | 2] - hull.from[at as 0 | 1 | 2]) as [
    number,
    number,
    number,
  ];
  const feet = cabinet.structure.feet.count > 0 ? cabinet.structure.feet.height : 0;
  const scale = drawingScale(
    [w + d, h + feet + d],
    [area.width - LEFT - BETWEEN - 6, area.height - 2 * BELOW - 2 * ABOVE],
  );
  const { factor } = scale;
  const columns = angle === 'first' ? [w, d] : [d, w];
  const left = area.x + LEFT + (area.width - LEFT - 6 - BETWEEN - (w + d) * factor) / 2;
  const second = left + columns[0]! * factor + BETWEEN;
  const [frontX, sideX] = angle === 'first' ? [left, second] : [second, left];
  const frontHeight = (h + feet) * factor;
  const planHeight = d * factor;
  const [frontY, planY] =
    angle === 'first'
      ? [area.y + ABOVE, area.y + ABOVE + frontHeight + BELOW + ABOVE]
      : [area.y + ABOVE + planHeight + BELOW + ABOVE, area.y + ABOVE];
  const front = placed(views.front, hull, factor, frontX, frontY, feet);
  const side = placed(views.left, hull, factor, sideX, frontY, feet);
  const plan = placed(views.above, hull, factor, frontX, planY, 0);
  const all: readonly Seen[] = [...boards.map(boardSeen), ...feetOf(cabinet, hull)];
  const inner = boards.filter(({ kind }) => kind === 'partition');
  const marks = [
    ...seen(front.frame, all),
    ...inner.map(({ place }) => ghost(front.frame, place, 'hidden')),
    ...hingesOf(cabinet, boards, front.frame),
    ...seen(side.frame, all),
    ...inner.map(({ place }) => ghost(side.frame, place, 'hidden')),
    ...seen(plan.frame, all),
    ...title(front, 'from the front'),
    ...title(side, 'from the left'),
    ...title(plan, 'from above'),
    ...dimensions(front, hull, cabinet, angle === 'first' ? ['x', 'z'] : ['x'], area, feet),
    // Heights stand left of all views.
    ...dimensions(side, hull, cabinet, angle === 'first' ? ['y'] : ['y', 'z'], area, feet),
    ...dimensions(plan, hull, cabinet, ['y up'], area, 0),
  ];
  return {
    kind: 'drawn',
    title: 'General arrangement',
    scale: scale.name,
    says: `The cabinet, ${mm(w)} wide, ${mm(d)} deep and ${mm(h)} high without feet, from the front, from the left and from above, in ${angle} angle`,
    marks,
  };
}

/** A view with the upper left corner of what it shows at a place of the paper. */
function placed(view: View, hull: Hull, factor: number, left: number, top: number, feet: number): Placed {
  const bare: Frame = { view, x: 0, y: 0, factor };
  const { x, y, width, height } = rectangle(bare, hull);
  return {
    frame: { ...bare, x: left - x, y: top - y },
    left,
    top,
    width,
    height: height + feet * factor,
  };
}

/** Above a view, in as many lines as the next view leaves room for. */
function title({ left, top, width }: Placed, words: string, above = 3): readonly Mark[] {
  const lines = brokenLines(words, width + BETWEEN - 2, TITLE);
  return lines.map((each, at) => text([left, top - above - (lines.length - 1 - at) * 1.3 * TITLE], each, TITLE));
}

/** The side on which a leaf turns, in words on it. */
function hingesOf(cabinet: Cabinet, boards: readonly BoardPart[], frame: Frame): readonly Mark[] {
  return Object.entries(cabinet.doors).flatMap(([id, { face }]) => {
    const leaf = boards.find(({ of }) => of === `doors.${id}`);
    if (leaf === undefined || face !== 'front') return [];
    const { x, y, width, height } = rectangle(frame, leaf.place);
    const hinge = cabinet.fit.doors[id]?.hinge ?? 'left';
    return [
      text([x + width / 2, y + height / 2 - 2], id, 2.6, { align: 'middle' }),
      text([x + width / 2, y + height / 2 + 2], `hinge: ${hinge}`, 2.2, { align: 'middle', grey: true }),
    ];
  });
}

type Way = 'x' | 'y' | 'z' | 'y up';

/** Running dimensions of the outside, the inside and the bays, from the lower left corner of the view. */
function dimensions(
  { frame, left, top, width, height }: Placed,
  hull: Hull,
  { inside, bays }: Cabinet,
  ways: readonly Way[],
  area: Area,
  feet: number,
): readonly Mark[] {
  const bottom = top + height;
  const marks: Mark[] = [];
  if (ways.includes('x') || ways.includes('y')) {
    const x = ways.includes('x');
    const index = x ? 0 : 1;
    const size = x ? inside.width : inside.depth;
    const inner = x ? Object.values(bays).flatMap((bay) => [...bay.x]) : [];
    // Looked at from the left the front edge is at the right, and is the datum.
    const origin = hull.from[index];
    const at = (value: number): number => across(frame, x ? [value, 0, 0] : [0, value, 0]);
    marks.push(
      ...level({
        origin: at(origin),
        across: bottom + 9,
        from: bottom,
        stops: distinct([0, size, ...inner, hull.to[index]])
          .filter((value) => value - origin > 1e-5)
          .map((value) => ({ at: at(value), words: mm(value - origin) })),
        beyond: 2,
        low: Math.max(area.x + 2, left - 6),
        high: Math.min(area.x + area.width - 2, left + width + 8),
      }),
    );
  }
  const vertical = ways.includes('z') ? 2 : ways.includes('y up') ? 1 : undefined;
  if (vertical !== undefined) {
    const origin = hull.from[vertical] - (vertical === 2 ? feet : 0);
    const size = vertical === 2 ? inside.height : inside.depth;
    const inner = vertical === 2 ? Object.values(bays).flatMap((bay) => [...bay.z]) : [];
    const at = (value: number): number => down(frame, vertical === 2 ? [0, 0, value] : [0, value, 0]);
    marks.push(
      ...upright({
        origin: at(origin),
        across: left - 6,
        from: left,
        stops: distinct([hull.from[vertical], 0, size, ...inner, hull.to[vertical]])
          .filter((value) => value - origin > 1e-5)
          .map((value) => ({ at: at(value), words: mm(value - origin) })),
        beyond: -2,
        low: top - 4,
        high: bottom + 4,
      }),
    );
  }
  return marks;
}

/** Everything of the machines, in every position that it takes, in the cabinet's own places. */
function machinePlaces(
  cabinet: Cabinet,
): readonly { readonly id: string; readonly what: string; readonly place: Place }[] {
  return Object.entries(cabinet.bays).flatMap(([bay, { x, z }]) =>
    standingIn(cabinet, bay).flatMap(({ id, parts, at }) =>
      parts.map((part) => {
        const { from, to, what } = movedTo(part, at);
        const shift = ([a, b, c]: readonly [number, number, number]): Triple => [a + x[0], b, c + z[0]];
        return { id, what, place: { from: shift(from), to: shift(to) } };
      }),
    ),
  );
}

function openSheet(cabinet: Cabinet, { boards }: Construction, area: Area, angle: Angle): Part {
  const hull = hullOf(boards);
  const [w, d, h] = [0, 1, 2].map((at) => hull.to[at as 0 | 1 | 2] - hull.from[at as 0 | 1 | 2]) as [
    number,
    number,
    number,
  ];
  const feet = cabinet.structure.feet.count > 0 ? cabinet.structure.feet.height : 0;
  const scale = drawingScale([w + d, h + feet], [area.width - LEFT - BETWEEN - 6, area.height - BELOW - 2 * ABOVE]);
  const { factor } = scale;
  const left = area.x + LEFT + (area.width - LEFT - 6 - BETWEEN - (w + d) * factor) / 2;
  const top = area.y + ABOVE + 4;
  const [frontX, sectionX] =
    angle === 'first' ? [left, left + w * factor + BETWEEN] : [left + d * factor + BETWEEN, left];
  const front = placed(views.front, hull, factor, frontX, top, feet);
  const section = placed(views.left, hull, factor, sectionX, top, feet);
  const standing = boards.filter(({ kind, of }) => kind !== 'leaf' && of !== 'faces.front');
  const machines = machinePlaces(cabinet);
  const cut = (hull.from[0] + hull.to[0]) / 2;
  const crossed = ({ place }: { readonly place: Place }): boolean => place.from[0] < cut && place.to[0] > cut;
  const beyond = ({ place }: { readonly place: Place }): boolean => place.to[0] > cut;
  const line0 = across(front.frame, [cut, 0, 0]);
  const marks: Mark[] = [
    ...seen(front.frame, [...standing.map(boardSeen), ...feetOf(cabinet, hull)]),
    ...machines.map(({ place }) => ghost(front.frame, place, 'beside')),
    ...names(machines, front.frame),
    ...cuttingLine(line0, front),
    ...seen(section.frame, [
      ...boards
        .filter((board) => beyond(board) && !crossed(board))
        .map((board): Seen => ({ place: board.place, line: 'thin' })),
      ...feetOf(cabinet, hull).filter(beyond),
    ]),
    ...boards.filter(crossed).map(({ place }): Mark => {
      const { x, y, width, height } = rectangle(section.frame, place);
      return frameBox(x, y, width, height, 'outline', 'shade');
    }),
    ...inSection(machines, cut).map(({ place }) => ghost(section.frame, place, 'beside')),
    ...title(front, 'from the front, without doors', 7),
    ...title(section, 'section A-A, from the left', 7),
    ...dimensions(front, hull, cabinet, angle === 'first' ? ['x', 'z'] : ['x'], area, feet),
    ...dimensions(section, hull, cabinet, angle === 'first' ? ['y'] : ['y', 'z'], area, feet),
  ];
  return {
    kind: 'drawn',
    title: 'Inside and section',
    scale: scale.name,
    says: `The cabinet without its doors, and cut through the middle of its width, with ${Object.keys(cabinet.machines).length} machines in every position that they take`,
    marks,
  };
}

/** Where the section is cut: the wide ends of its line, and arrows the way one looks (ISO 128-3, from memory); between them stand names. */
function cuttingLine(x: number, { top, height }: Placed): readonly Mark[] {
  const ends = [
    { outer: top - 3, inner: top + 3, words: top - 4 },
    { outer: top + height + 3, inner: top + height - 3, words: top + height + 6.5 },
  ];
  return ends.flatMap(({ outer, inner, words }): Mark[] => [
    line('outline', [x, outer], [x, inner]),
    line('outline', [x, outer], [x + 5, outer]),
    outline(
      [
        [x + 7.2, outer],
        [x + 5, outer - 0.6],
        [x + 5, outer + 0.6],
      ],
      'thin',
      'ink',
    ),
    text([x - 3.4, words], 'A', 3.4, { bold: true }),
  ]);
}

/** Machines that the section goes through; where it goes through none, those that stand beyond it. */
function inSection(machines: ReturnType<typeof machinePlaces>, cut: number): ReturnType<typeof machinePlaces> {
  const of = (test: (place: Place) => boolean): ReturnType<typeof machinePlaces> => {
    const ids = new Set(machines.flatMap(({ id, what, place }) => (/frame/.test(what) && test(place) ? [id] : [])));
    return machines.filter(({ id }) => ids.has(id));
  };
  const crossed = of(({ from, to }) => from[0] < cut && to[0] > cut);
  return crossed.length > 0 ? crossed : of(({ from }) => from[0] >= cut);
}

/** The name of each machine once, in the middle of its frame. */
function names(machines: ReturnType<typeof machinePlaces>, frame: Frame): readonly Mark[] {
  const told = new Set<string>();
  return machines.flatMap(({ id, what, place }) => {
    if (told.has(id) || !/frame/.test(what)) return [];
    told.add(id);
    const { x, y, width, height } = rectangle(frame, place);
    return [text([x + width / 2, y + height / 2 + 1], id, 2.6, { align: 'middle' })];
  });
}
