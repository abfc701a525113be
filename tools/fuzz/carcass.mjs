// The case: bays stacked and side by side, boards between them, doors, seals and joints from tight to wide open.

import { doubtful, length, millimetres } from './written.mjs';

const boards = [
  'plywood 18 mm',
  'MDF 12 mm',
  'OSB 15 mm',
  'steel 0.8 mm',
  'aluminium 2 mm',
  'acrylic 4 mm',
  'polycarbonate 5 mm',
  'glass 4 mm',
  ['plywood 12 mm', 'mineral wool 30 mm', 'plywood 6 mm'],
  ['steel 1 mm', 'PIR 20 mm'],
];
const leaves = [
  'glass 4 mm',
  'acrylic 4 mm',
  'polycarbonate 5 mm',
  'plywood 18 mm',
  ['glass 4 mm', 'still air 12 mm', 'glass 4 mm'],
];
const seals = ['none', 'brush', 'foam strip', 'rubber profile', 'silicone profile', 'magnetic profile'];
/** No side of a bay is less than this, mm. */
const SMALLEST = 220;

/** Rectangles x by z, mm, that fill the inside but for boards between them. */
export function drawBays(draw, inside, count) {
  let rooms = [{ x: [0, inside.width], z: [0, inside.height] }];
  for (let tries = 0; rooms.length < count && tries < 40; tries += 1) {
    const old = draw.pick(rooms);
    const axis = draw.chance(0.65) ? 'z' : 'x';
    const [from, to] = old[axis];
    const board = draw.pick([0, 12, 15, 18, 20]);
    if (to - from < 2 * SMALLEST + board) continue;
    const cut = Math.round(draw.between(from + SMALLEST, to - SMALLEST - board));
    const parts = [
      { ...old, [axis]: [from, cut] },
      { ...old, [axis]: [cut + board, to] },
    ];
    rooms = rooms.flatMap((room) => (room === old ? parts : [room]));
  }
  return rooms.map((room, index) => ({ ...room, id: `bay${index + 1}` }));
}

const overlap = ([a, b], [c, d]) => Math.min(b, d) - Math.max(a, c);

/** Pairs of bays with a board between them; the lower or left one first. */
export function neighbours(bays) {
  return bays.flatMap((one, index) =>
    bays.slice(index + 1).flatMap((other) => {
      const along = ['x', 'z'].find((axis) => overlap(one[axis], other[axis]) >= 60);
      if (along === undefined) return [];
      const across = along === 'x' ? 'z' : 'x';
      const gap = -overlap(one[across], other[across]);
      if (gap < 0 || gap > 60) return [];
      return [one[across][0] < other[across][0] ? [one, other] : [other, one]];
    }),
  );
}

export function writeBays(draw, bays, inside) {
  const rangeOf = ([from, to]) => `${from} mm to ${to} mm`;
  return Object.fromEntries(
    bays.map(({ id, x, z }) => [
      id,
      {
        ...(z[0] > 0 || z[1] < inside.height || draw.chance(0.5) ? { z: rangeOf(z) } : {}),
        ...(x[0] > 0 || x[1] < inside.width || draw.chance(0.5) ? { x: rangeOf(x) } : {}),
        ...(draw.chance(0.4) ? { 'air-zones': draw.whole(1, 2) } : {}),
      },
    ]),
  );
}

export function drawShelves(draw, bays, inside) {
  const shelves = {};
  for (const [low, high] of neighbours(bays)) {
    if (draw.chance(0.25)) continue;
    const shared = Math.max(overlap(low.x, high.x), overlap(low.z, high.z));
    const widest = Math.min(inside.depth, shared) / 1000;
    const holes = Object.fromEntries(
      Array.from({ length: draw.whole(0, 2) }, (_, index) => [
        `hole${index + 1}`,
        {
          hole: `${millimetres(draw.scaled(0.015, 0.4 * widest))} round`,
          ...(draw.chance(0.3) ? { count: draw.whole(1, 4) } : {}),
          ...(draw.chance(0.3) ? { discharge: draw.between(0.4, 0.9).toFixed(2) * 1 } : {}),
        },
      ]),
    );
    shelves[`${low.id}-${high.id}-board`] = {
      between: [low.id, high.id],
      ...(draw.chance(0.6) ? { 'made-of': draw.pick(boards) } : {}),
      holes,
    };
  }
  return shelves;
}

/** `sealed` leaves no crack at all. */
export function drawCarcass(draw, bays, inside, sealed) {
  const faces = {};
  if (draw.chance(0.5)) faces.back = { against: 'wall', gap: length(draw, draw.between(0, 0.1)) };
  if (draw.chance(0.3)) faces.bottom = { against: 'floor', gap: length(draw, draw.between(0, 0.1)) };
  if (draw.chance(0.3)) faces[draw.pick(['left', 'right', 'top'])] = { 'made-of': draw.pick(boards) };
  const carcass = {
    inside: `${inside.width} mm x ${inside.depth} mm x ${inside.height} mm`,
    'made-of': draw.pick(boards),
    ...(Object.keys(faces).length > 0 ? { faces } : {}),
  };
  if (sealed) carcass['joint-gap'] = '0 mm';
  else if (draw.chance(0.7))
    carcass['joint-gap'] = draw.chance(0.15) ? '0 mm' : length(draw, draw.scaled(2e-5, 1.5e-3));
  const doorOf = () => ({
    ...(draw.chance(0.8) ? { 'made-of': draw.pick(leaves) } : {}),
    ...(sealed
      ? { 'seal-gap': '0 mm' }
      : draw.chance(0.5)
        ? { seal: draw.pick(seals) }
        : { 'seal-gap': doubtful(draw, length(draw, draw.scaled(5e-5, 4e-3))) }),
    ...(draw.chance(0.15)
      ? { sun: { '8:00': '0 W/m2', '11:00': `${draw.whole(50, 500)} W/m2`, '15:00': '0 W/m2' } }
      : {}),
  });
  const kind = draw.share();
  if (kind < 0.35) carcass.door = doorOf();
  else if (kind < 0.85) {
    carcass.doors = Object.fromEntries(
      bays
        .filter(() => draw.chance(0.85))
        .map(({ id }) => [`${id}-door`, { ...doorOf(), bays: draw.chance(0.5) ? id : [id] }]),
    );
  }
  return carcass;
}

export function doorIds(carcass) {
  return [...(carcass.door === undefined ? [] : ['door']), ...Object.keys(carcass.doors ?? {})];
}
