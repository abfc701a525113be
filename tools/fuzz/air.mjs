// Ways for air: holes, exhausts, intakes, fans against one another, filters that fill, air that is turned round.

import { neighbours } from './carcass.mjs';
import { drawControl } from './switches.mjs';
import { flow, length, millimetres, share } from './written.mjs';

const axial = ['40', '60', '80', '92', '120', '140'].flatMap((size) => [
  `axial ${size} mm quiet`,
  `axial ${size} mm strong`,
]);
const blowers = ['blower 75 mm', 'blower 97 mm', 'blower 120 mm', 'duct blower 100 mm'];
const filters = ['E11', 'E12', 'H13'].flatMap((grade) =>
  ['100', '120', '150', '200', '250'].map((size) => `pleated ${grade} ${size} mm`),
);
const mats = ['prefilter mat 120 mm', 'pleated F7 120 mm', 'deep pleated H13 200 mm', 'round H13 120 mm'];
const carbons = ['granular 25 mm', 'thin pad'].flatMap((kind) =>
  ['100', '120', '150', '200', '250'].map((size) => `${kind} ${size} mm`),
);
const ducts = ['smooth', 'flexible'].flatMap((kind) => ['80', '100', '125', '150'].map((size) => `${kind} ${size} mm`));
const round = () => ({ size: '100 mm round' });
const fittings = [
  { grille: 'perforated 50 % free' },
  { grille: 'insect mesh' },
  { louvre: 'wide slats' },
  { guard: 'wire guard' },
  { bend: '90 degree' },
  { bend: 'tight 90 degree' },
  { muffler: 'lined box' },
  { adapter: 'cone' },
].map((part) => ({ ...part, ...round() }));

function drawFan(draw, context) {
  const kind = draw.pick(draw.chance(0.3) ? blowers : axial);
  const fan = { fan: kind };
  if (draw.chance(0.15)) {
    const most = draw.scaled(6, 200);
    const head = draw.scaled(5, 300);
    const bend = draw.between(0.4, 1);
    const points = [0, 0.3, 0.6, 0.85, 1].map((at) => [
      flow(draw, most * at),
      `${(head * (1 - at ** (1 / bend))).toFixed(2)} Pa`,
    ]);
    fan.curve = Object.fromEntries(points);
  }
  if (draw.chance(0.35)) fan.speed = share(draw.between(0.2, 1));
  if (draw.chance(0.9)) fan.control = drawControl(draw, context);
  return fan;
}

function drawFilter(draw) {
  return {
    filter: draw.pick(draw.chance(0.3) ? mats : filters),
    ...(draw.chance(0.4) ? { 'seat-gap': length(draw, draw.scaled(2e-5, 2e-3)) } : {}),
    ...(draw.chance(0.4) ? { loading: share(draw.between(0, 2)) } : {}),
  };
}

function drawParts(draw, context, { fan, flap }) {
  const parts = [];
  if (draw.chance(0.25)) parts.push(draw.pick(fittings));
  if (draw.chance(0.5)) parts.push(drawFilter(draw));
  if (draw.chance(0.3)) {
    parts.push({ carbon: draw.pick(carbons), ...(draw.chance(0.3) ? { load: share(draw.between(0, 0.15)) } : {}) });
  }
  if (fan) parts.push(drawFan(draw, context));
  if (fan && draw.chance(0.06)) parts.push(drawFan(draw, context));
  if (draw.chance(0.3)) parts.push({ duct: draw.pick(ducts), length: length(draw, draw.between(0.1, 4)) });
  if (draw.chance(0.25)) parts.push(draw.pick(fittings));
  if (flap && draw.chance(0.2)) parts.push({ flap: draw.pick(['light flap', 'shutter']) });
  if (draw.chance(0.05)) parts.push({ loss: Number(draw.between(0, 30).toFixed(2)), size: '80 mm x 60 mm' });
  return parts;
}

function drawHole(draw, bay, inside) {
  const widest = 0.4 * Math.min(inside.depth, bay.x[1] - bay.x[0], bay.z[1] - bay.z[0]) * 0.001;
  return draw.chance(0.6)
    ? `${millimetres(draw.scaled(0.012, widest))} round`
    : `${millimetres(draw.scaled(0.02, widest))} x ${millimetres(draw.scaled(0.008, widest))}`;
}

function drawPlace(draw, bay) {
  return { face: draw.pick(['left', 'right', 'back', 'front']), z: `${draw.whole(bay.z[0], bay.z[1])} mm` };
}

const outside = (draw) => (draw.chance(0.3) ? 'outdoors' : 'room');
const windy = (draw, end) =>
  end === 'outdoors' && draw.chance(0.7) ? { wind: Number(draw.between(-1, 1).toFixed(2)) } : {};

/** From any bay to any other through a fan, or to its neighbour through a hole. */
function drawBetween(draw, bays, context) {
  const pairs = neighbours(bays);
  if (draw.chance(0.5) && pairs.length > 0) {
    const [from, to] = draw.pick(pairs);
    return { from: from.id, to: to.id, hole: '45 mm round' };
  }
  const from = draw.pick(bays);
  const to = draw.pick(bays.filter((bay) => bay !== from));
  return { from: from.id, to: to.id, parts: drawParts(draw, context, { fan: true, flap: false }) };
}

/** Share of the cabinets with a fan that has to switch hundreds of times a day. */
const BUSY = 0.09;

/** A small fan switched within a fraction of a kelvin by the air of a bay that a machine warms. */
function busyExhaust(draw, bay, warm) {
  const on = warm + draw.between(3, 8);
  return {
    from: bay,
    to: 'room',
    parts: [
      {
        fan: draw.pick(['axial 40 mm quiet', 'axial 40 mm strong', 'axial 60 mm quiet']),
        control: {
          thermostat: bay,
          on: `${on.toFixed(2)} °C`,
          off: `${(on - draw.between(0.3, 1.2)).toFixed(2)} °C`,
        },
      },
    ],
  };
}

/** `sealed` bays get nothing that leads anywhere. */
export function drawAir(draw, context) {
  const { bays: all, inside, sealed, chambers } = context;
  const bays = all.filter(({ id }) => !sealed.includes(id));
  const air = {};
  const add = (id, path) => {
    air[`${id}${Object.keys(air).length + 1}`] = path;
  };
  const contextOf = { ...context, bays: all.map(({ id }) => id) };
  if (bays.length > 0) {
    for (let k = draw.whole(0, 3); k > 0; k -= 1) {
      const bay = draw.pick(bays);
      const end = outside(draw);
      add('vent', {
        ...(draw.chance(0.8) ? { from: end, to: bay.id } : { from: bay.id, to: end }),
        hole: drawHole(draw, bay, inside),
        ...(draw.chance(0.2) ? { count: draw.whole(1, 3) } : {}),
        ...(draw.chance(0.7) ? { at: drawPlace(draw, bay) } : {}),
        ...windy(draw, end),
      });
    }
    for (let k = draw.whole(0, Math.min(3, bays.length)); k > 0; k -= 1) {
      const bay = draw.pick(bays);
      const end = outside(draw);
      const inwards = draw.chance(0.25);
      add(inwards ? 'intake' : 'exhaust', {
        ...(inwards ? { from: end, to: bay.id } : { from: bay.id, to: end }),
        ...(draw.chance(0.2) ? { hole: drawHole(draw, bay, inside) } : {}),
        at: drawPlace(draw, bay),
        ...windy(draw, end),
        parts: drawParts(draw, contextOf, { fan: true, flap: true }),
      });
    }
    const warmBays = bays.filter(({ id }) => context.warmBays.includes(id));
    if (warmBays.length > 0 && draw.chance(BUSY)) add('busy', busyExhaust(draw, draw.pick(warmBays).id, context.warm));
    if (bays.length > 1 && draw.chance(0.4)) add('between', drawBetween(draw, bays, contextOf));
  }
  if (draw.chance(0.25)) {
    const { id } = draw.pick(all);
    add('clean', { from: id, to: id, parts: drawParts(draw, contextOf, { fan: true, flap: false }) });
  }
  for (const id of chambers) {
    const end = draw.chance(0.5) && sealed.length === 0 ? 'room' : undefined;
    if (end !== undefined && draw.chance(0.3)) {
      add('chamber', { from: `${id}.chamber`, to: end, parts: drawParts(draw, contextOf, { fan: true, flap: true }) });
    }
  }
  return air;
}
