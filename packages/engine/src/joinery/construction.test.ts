import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { type BoardPart, type Cut, cutVolume, volumeOf } from './board-part.ts';
import { constructionOf } from './construction.ts';
import { cutListOf } from './cut-list.ts';
import { shared, span } from './place.ts';

/** A cabinet of two bays with a shelf between them; `more` goes into its sections. */
function cabinetOf(carcass: string, more = ''): Cabinet {
  const text = `stillair: 1
cabinet: { ${carcass} }
${more}
days: { usual: {} }
`;
  const answer = readCabinet('cabinet.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('\n'));
  return answer.cabinet;
}

const door = 'door: { made-of: glass 4 mm }';
const bays = 'bays: { lower: { z: 0 mm to 380 mm }, upper: { z: 398 mm to 700 mm } }';
const shelf = (joint: string): string => `shelves: { mid: { between: [lower, upper], joint: ${joint} } }`;
const inside = 'inside: 600 mm x 600 mm x 700 mm';
const CUBIC_MM = 1e9;

const total = (boards: readonly BoardPart[], of: (board: BoardPart) => number): number =>
  boards.reduce((sum, board) => sum + of(board), 0);
const carcassOf = (cabinet: Cabinet): BoardPart[] =>
  constructionOf(cabinet).boards.filter(({ kind }) => kind === 'carcass');
const named = (cabinet: Cabinet, name: string): BoardPart =>
  constructionOf(cabinet).boards.find((board) => board.name === name)!;
const cutsOf = (cabinet: Cabinet, purpose: Cut['purpose']): { board: string; cut: Cut }[] =>
  constructionOf(cabinet).boards.flatMap(({ name, cuts }) =>
    cuts.filter((cut) => cut.purpose === purpose).map((cut) => ({ board: name, cut })),
  );
const mm = (value: number): number => Math.round(value * 1e5) / 100;

describe('boards of a carcass', () => {
  it('cross: a double skin of 12 mm with 30 mm hollow round 600 x 700 x 600 mm: sizes and 54 340 416 mm³ (separate calculation)', () => {
    const cabinet = cabinetOf(`${inside}, made-of: [plywood 12 mm, still air 30 mm, plywood 12 mm], ${door}`);
    expect(carcassOf(cabinet).map(({ name, u, v }) => `${name} ${mm(u)} x ${mm(v)}`)).toEqual([
      'top, inner skin 624 x 600',
      'bottom, inner skin 624 x 600',
      'left side, inner skin 600 x 700',
      'right side, inner skin 600 x 700',
      'back, inner skin 624 x 724',
      'top, outer skin 708 x 642',
      'bottom, outer skin 708 x 642',
      'left side, outer skin 642 x 784',
      'right side, outer skin 642 x 784',
      'back, outer skin 708 x 808',
    ]);
    expect(Math.round(total(carcassOf(cabinet), volumeOf) * CUBIC_MM)).toBe(54_340_416);
    const { lots } = cutListOf(cabinet);
    expect(lots.find(({ board }) => board === 'plywood')?.area).toBeCloseTo(4.5284, 4);
  });

  it('exact: boards and hollows fill the carcass to the cubic millimetre, whatever each face is made of', () => {
    const board = fc.integer({ min: 3, max: 40 }).map((thick) => `plywood ${thick} mm`);
    const air = fc.integer({ min: 5, max: 60 }).map((thick) => `still air ${thick} mm`);
    const build = fc.oneof(
      board.map((one) => [one]),
      fc.tuple(board, air, board),
      fc.tuple(board, board),
    );
    const thickness = (layers: readonly string[]): number =>
      layers.reduce((sum, layer) => sum + Number(/(\d+) mm$/.exec(layer)![1]), 0);
    const side = fc.integer({ min: 200, max: 2000 });
    const faces = fc.record({ top: build, bottom: build, left: build, right: build, back: build });
    fc.assert(
      fc.property(side, side, side, faces, fc.boolean(), (width, depth, height, of, closed) => {
        const text = Object.entries(of)
          .map(([face, layers]) => `${face}: { made-of: [${layers.join(', ')}] }`)
          .join(', ');
        const cabinet = cabinetOf(
          `inside: ${width} mm x ${depth} mm x ${height} mm, made-of: plywood 18 mm, faces: { ${text} }${closed ? '' : `, ${door}`}`,
        );
        const [top, bottom, left, right, back] = [of.top, of.bottom, of.left, of.right, of.back].map(thickness);
        const front = closed ? 18 : 0;
        const solid =
          (width + left! + right!) * (depth + back! + front) * (height + top! + bottom!) - width * depth * height;
        // A hollow is what its layer would be as a board: the same cabinet with boards in its place is solid.
        const filled = cabinetOf(
          `inside: ${width} mm x ${depth} mm x ${height} mm, made-of: plywood 18 mm, faces: { ${text.replaceAll('still air', 'plywood')} }${closed ? '' : `, ${door}`}`,
        );
        expect(Math.round(total(carcassOf(filled), volumeOf) * CUBIC_MM)).toBe(solid);
        expect(total(carcassOf(cabinet), volumeOf)).toBeLessThanOrEqual(solid / CUBIC_MM + 1e-9);
      }),
      { numRuns: 40 },
    );
  });

  it('property: no two boards are in one place but for what is cut out there', () => {
    for (const joint of ['glued', 'pins', 'cleats', 'housing'])
      for (const [corners, lies] of [
        ['butt', 'before'],
        ['rebate', 'before'],
        ['butt', 'in'],
      ]) {
        const cabinet = cabinetOf(
          `${inside}, made-of: plywood 18 mm, door: { made-of: plywood 18 mm }`,
          `${bays}\n${shelf(joint)}\njoinery: { corners: ${corners}, doors: { door: { lies: ${lies} } } }`,
        );
        const { boards } = constructionOf(cabinet);
        const overlap = boards.flatMap((one, at) =>
          boards
            .slice(at + 1)
            .map((other) =>
              (['x', 'y', 'z'] as const).reduce(
                (product, axis) => product * Math.max(0, shared(span(axis, one.place), span(axis, other.place))),
                1,
              ),
            ),
        );
        const grooves = total(boards, (board) =>
          cutVolume({ ...board, cuts: board.cuts.filter(({ purpose }) => /housing|rebate/.test(purpose)) }),
        );
        expect(overlap.reduce((sum, each) => sum + each, 0)).toBeCloseTo(grooves, 12);
      }
  });

  it('property: a leaf before a fixed front with an opening is in nobody’s place either', () => {
    for (const lies of ['before', 'in']) {
      const cabinet = cabinetOf(
        `${inside}, made-of: [plywood 12 mm, cork 20 mm], doors: { hatch: { bays: [lower], made-of: plywood 18 mm } }`,
        `${bays}\njoinery: { doors: { hatch: { lies: ${lies} } } }`,
      );
      const leaf = named(cabinet, 'leaf of hatch');
      expect(leaf.place.from[1]).toBeCloseTo(lies === 'before' ? -0.05 : -0.032, 9);
      const front = constructionOf(cabinet).boards.filter(({ of }) => of === 'faces.front');
      expect(front.map(({ cuts }) => cuts.map(({ what }) => what))).toEqual([
        ['opening of hatch'],
        ['opening of hatch'],
      ]);
    }
  });

  it('exact: what a rebate or a groove takes out of one board, the other has more', () => {
    const net = (more: string, joint: string): number =>
      total(
        constructionOf(cabinetOf(`${inside}, made-of: plywood 18 mm, ${door}`, `${bays}\n${shelf(joint)}\n${more}`))
          .boards,
        (board) => volumeOf(board) - cutVolume(board),
      );
    const blunt = net('', 'glued');
    expect(net('joinery: { corners: rebate }', 'glued') * CUBIC_MM).toBeCloseTo(blunt * CUBIC_MM, 3);
    expect(net('', 'housing') * CUBIC_MM).toBeCloseTo(blunt * CUBIC_MM, 3);
  });

  it('exact: grooves of 6 mm in 18 mm lengthen the shelf by 12 mm and lie at its height', () => {
    const cabinet = cabinetOf(`${inside}, made-of: plywood 18 mm, ${door}`, `${bays}\n${shelf('housing')}`);
    expect(mm(named(cabinet, 'shelf mid').u)).toBe(612);
    expect(cutsOf(cabinet, 'housing').map(({ board, cut }) => [board, cut.depth, cut.side, cut.shape])).toEqual(
      ['left side', 'right side'].map((side) => [
        side,
        expect.closeTo(0.006, 9) as number,
        'seen',
        {
          kind: 'rectangle',
          from: [0, expect.closeTo(0.38, 9) as number],
          to: [0.6, expect.closeTo(0.398, 9) as number],
        },
      ]),
    );
  });

  it('exact: boards measured thinner than written keep the inside and make the outside smaller', () => {
    const sizes = (more: string): number[] => {
      const cabinet = cabinetOf(`${inside}, made-of: plywood 18 mm, ${door}`, more);
      return [named(cabinet, 'top').u, named(cabinet, 'left side').v, named(cabinet, 'back').v].map(mm);
    };
    expect(sizes('')).toEqual([636, 700, 736]);
    expect(sizes('joinery: { measured: { plywood 18 mm: 17.4 mm } }')).toEqual([634.8, 700, 734.8]);
  });

  it('exact: a lining lies inside of boards that meet as if it were not there', () => {
    const cabinet = cabinetOf(`${inside}, made-of: plywood 18 mm, lining: felt 10 mm, ${door}`);
    expect(named(cabinet, 'bottom').u).toBeCloseTo(0.6 + 2 * 0.028, 9);
    expect(named(cabinet, 'left side').v).toBeCloseTo(0.71, 9);
    expect(named(cabinet, 'left side, lining').v).toBeCloseTo(0.7, 9);
  });
});

describe('leaves', () => {
  const leafOf = (thick: string, more = ''): BoardPart =>
    named(
      cabinetOf(`${inside}, made-of: plywood 18 mm, door: { made-of: ${thick}, hinge: right }`, more),
      'leaf of door',
    );

  it('exact: before edges of 18 mm it leaves 1.5 mm of them free; in the opening 2.5 mm all round', () => {
    expect([leafOf('glass 4 mm').u, leafOf('glass 4 mm').v].map(mm)).toEqual([633, 733]);
    const inset = leafOf('glass 4 mm', 'joinery: { doors: { door: { lies: in } } }');
    expect([inset.u, inset.v].map(mm)).toEqual([595, 695]);
    expect(inset.place.from[1]).toBe(0);
  });

  it('exact: two leaves before one upright are apart by their gap', () => {
    const cabinet = cabinetOf(
      'inside: 818 mm x 500 mm x 700 mm, made-of: plywood 18 mm, doors: { west: { bays: [a] }, east: { bays: [b], hinge: right } }',
      'bays: { a: { x: 0 mm to 400 mm }, b: { x: 418 mm to 818 mm } }',
    );
    const [west, east] = ['leaf of west', 'leaf of east'].map((name) => named(cabinet, name).place);
    expect(east!.from[0] - west!.to[0]).toBeCloseTo(0.0025, 9);
  });

  it('exact: cups of a wooden leaf lie 22 mm from the hinged edge, with two pilots 32 mm apart at the same height in the side', () => {
    const cabinet = cabinetOf(`${inside}, made-of: plywood 18 mm, door: { made-of: plywood 18 mm, hinge: right }`);
    const leaf = named(cabinet, 'leaf of door');
    const cups = cutsOf(cabinet, 'cup');
    expect(cups).toHaveLength(2);
    const pilots = cutsOf(cabinet, 'pilot');
    expect(pilots.map(({ board }) => board)).toEqual(Array(4).fill('right side'));
    for (const [at, { cut }] of cups.entries()) {
      if (cut.shape.kind !== 'round') throw new Error('a cup is round');
      expect(leaf.u - cut.shape.at[0]).toBeCloseTo(0.022, 9);
      const height = leaf.place.from[2] + cut.shape.at[1];
      const [one, other] = pilots
        .slice(2 * at, 2 * at + 2)
        .map(({ cut: { shape } }) => (shape.kind === 'round' ? shape.at : [0, 0]));
      expect([one![0], other![0]].map(mm)).toEqual([37, 37]);
      expect((one![1]! + other![1]!) / 2).toBeCloseTo(height, 9);
      expect(other![1]! - one![1]!).toBeCloseTo(0.032, 9);
    }
  });

  it('limit: a pane takes no cup, and that is told', () => {
    const cabinet = cabinetOf(`${inside}, made-of: plywood 18 mm, ${door}`);
    expect(cutsOf(cabinet, 'cup')).toEqual([]);
    expect(constructionOf(cabinet).problems.join()).toContain('takes no cup; say which holes');
  });

  it('exact: a pane whose hinges are said has two through holes for each, beside the hinged edge', () => {
    const holes = 'holes: { from-edge: 14 mm, apart: 22 mm, diameter: 10 mm }';
    const hung = (side: string): Cabinet =>
      cabinetOf(
        `${inside}, made-of: plywood 18 mm, door: { made-of: glass 6 mm, hinge: ${side}, hinges: { count: 3, ${holes} } }`,
      );
    const { problems, boards } = constructionOf(hung('right'));
    expect(problems).toEqual([]);
    const leaf = boards.find(({ kind }) => kind === 'leaf')!;
    const round = leaf.cuts.flatMap(({ shape, depth }) =>
      shape.kind === 'round' ? [{ at: shape.at, diameter: shape.diameter, depth }] : [],
    );
    expect(round).toHaveLength(6);
    for (const { at, diameter, depth } of round) {
      expect([mm(leaf.u - at[0]), mm(diameter), depth]).toEqual([14, 10, 'through']);
    }
    for (const pair of [0, 2, 4]) expect(mm(round[pair + 1]!.at[1] - round[pair]!.at[1])).toBe(22);
    const top = constructionOf(hung('top')).boards.find(({ kind }) => kind === 'leaf')!;
    expect(top.cuts.map(({ shape }) => shape.kind === 'round' && mm(top.v - shape.at[1]))).toEqual(Array(6).fill(14));
  });
});

describe('holes of air paths', () => {
  const air = (paths: string): Cabinet =>
    cabinetOf(`${inside}, made-of: [plywood 12 mm, cork 10 mm], ${door}`, `${bays}\nair: { ${paths} }`);

  it('exact: go through every layer of their face at one place, and through the board between bays', () => {
    const cabinet = air(
      'in: { from: room, to: lower, hole: 60 mm round, at: { face: left, along: 200 mm, z: 90 mm } }, up: { from: lower, to: upper, hole: 80 mm x 20 mm, count: 2 }',
    );
    const { boards } = constructionOf(cabinet);
    const places = boards.flatMap(({ place, cuts }) =>
      cuts.flatMap(({ what, shape }) =>
        what === 'air.in' && shape.kind === 'round'
          ? [[place.from[1] + shape.at[0], place.from[2] + shape.at[1]].map(mm)]
          : [],
      ),
    );
    expect(places).toEqual([
      [200, 90],
      [200, 90],
    ]);
    expect(cutsOf(cabinet, 'opening').filter(({ cut }) => cut.what === 'air.up')).toHaveLength(2 * 2);
  });

  it('limit: a hole that reaches over an edge is not made but asked for', () => {
    const cabinet = air(
      'in: { from: room, to: lower, hole: 300 mm round, at: { face: back, along: 100 mm, z: 200 mm } }',
    );
    expect(cutsOf(cabinet, 'hole')).toEqual([]);
    expect(constructionOf(cabinet).problems.filter((each) => each.startsWith('air.'))).toEqual([
      'air.in: its hole reaches over the edge of a board; say where with at:',
    ]);
  });

  it('property: every cut of a construction lies within its board', () => {
    const cabinet = cabinetOf(
      `${inside}, made-of: plywood 18 mm, door: { made-of: plywood 18 mm }`,
      `${bays}\n${shelf('pins')}\nair: { in: { from: room, to: lower, hole: 80 mm round }, out: { from: upper, to: room, parts: [{ fan: axial 92 mm quiet }] } }`,
    );
    let seen = 0;
    for (const { u, v, thickness, cuts } of constructionOf(cabinet).boards)
      for (const { shape, depth } of cuts) {
        seen++;
        const half = shape.kind === 'round' ? shape.diameter / 2 : 0;
        const [from, to] = shape.kind === 'round' ? [shape.at, shape.at] : [shape.from, shape.to];
        expect(Math.min(from[0], from[1]) - half).toBeGreaterThanOrEqual(-1e-9);
        expect(to[0] + half).toBeLessThanOrEqual(u + 1e-9);
        expect(to[1] + half).toBeLessThanOrEqual(v + 1e-9);
        if (depth !== 'through') expect(depth).toBeLessThan(thickness);
      }
    expect(seen).toBeGreaterThan(10);
  });
});

describe('joinery in the file', () => {
  it.each([
    ['{ doors: { dor: { lies: in } } }', 'there is no door "dor"'],
    ['{ measured: { plywod 18 mm: 17 mm } }', 'there is no board "plywod"'],
    ['{ measured: { plywood: 17 mm } }', 'does not say how thick'],
    ['{ measured: { plywood 18 mm: 12 mm } }', 'more than a quarter off'],
  ])('exact: %s is complained of', (joinery, complaint) => {
    expect(() => cabinetOf(`${inside}, made-of: plywood 18 mm, ${door}`, `joinery: ${joinery}`)).toThrow(complaint);
  });
});
