// A random cabinet that the reader must take, as the text of its file.

import { stringify } from 'yaml';
import { drawAir } from './air.mjs';
import { doorIds, drawBays, drawCarcass, drawShelves, writeBays } from './carcass.mjs';
import { drawHeats, drawJobs, drawMachines } from './machines.mjs';
import { drawsOf } from './random.mjs';
import { clock, doubtful, duration, share, temperatureCourse } from './written.mjs';

/** The text of cabinet `number` under `seed`; its one day is called `day`. */
export function cabinetText(seed, number) {
  const draw = drawsOf(seed, number);
  const file = drawCabinet(draw);
  return stringify(file, {
    collectionStyle: draw.chance(0.3) ? 'flow' : 'any',
    indent: draw.pick([2, 4]),
    defaultStringType: draw.pick(['PLAIN', 'QUOTE_DOUBLE', 'QUOTE_SINGLE']),
    lineWidth: 0,
  });
}

function drawCabinet(draw) {
  const inside = { width: draw.whole(450, 2400), depth: draw.whole(350, 800), height: draw.whole(500, 2200) };
  const bays = drawBays(draw, inside, draw.pick([1, 1, 1, 2, 2, 2, 3, 3, 4, 5, 6, 7, 8]));
  const tight = draw.chance(0.1);
  const sealed = tight && draw.chance(0.8) ? bays.filter(() => draw.chance(0.7)).map(({ id }) => id) : [];
  const machines = drawMachines(draw, bays, draw.pick([0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 5, 6, 8]));
  const cabinet = drawCarcass(draw, bays, inside, tight);
  const warm = draw.between(-20, 40);
  const day = drawDay(draw, machines, doorIds(cabinet), warm);
  const sensors = Object.fromEntries(
    Array.from({ length: draw.whole(0, 2) }, (_, index) => [
      `sensor${index + 1}`,
      {
        bay: draw.pick(bays).id,
        ...(draw.chance(0.3) ? { height: '150 mm' } : {}),
        ...(draw.chance(0.7) ? { lag: `${draw.pick([0, 0, 0, 5, 20, 60, 180, 600])} s` } : {}),
        ...(draw.chance(0.3) ? { offset: `${draw.between(-2, 2).toFixed(1)} K` } : {}),
      },
    ]),
  );
  const context = {
    sensors: Object.keys(sensors),
    machines: Object.keys(machines),
    bays: bays.map(({ id }) => id),
    warm,
    warmBays: Object.values(machines).map(({ bay }) => bay ?? bays[0].id),
  };
  const chambers = Object.keys(machines).filter((id) => machines[id].kind === 'chambered 250');
  const oneUnnamed = bays.length === 1 && draw.chance(0.3);
  const parts = {
    stillair: 1,
    title: 'Drawn at random; nobody owns it',
    room: drawRoom(draw, inside, warm),
    ...(draw.chance(0.7) ? { outdoors: drawOutdoors(draw) } : {}),
    cabinet,
    ...(oneUnnamed ? {} : { bays: writeBays(draw, bays, inside) }),
    shelves: drawShelves(draw, bays, inside),
    machines,
    air: drawAir(draw, { ...context, bays, inside, sealed, chambers }),
    sensors,
    heats: draw.chance(0.4) ? drawHeats(draw, context) : {},
    days: { day },
  };
  const text = Object.fromEntries(
    Object.entries(parts).filter(([, part]) => typeof part !== 'object' || Object.keys(part).length > 0),
  );
  return oneUnnamed ? JSON.parse(JSON.stringify(text).replaceAll('"bay1"', '"inside"')) : text;
}

function drawRoom(draw, inside, warm) {
  const metres = (least, most) => Math.max(least / 1000 + 0.05, draw.between(2, most));
  const room = {
    size: `${metres(inside.width, 9).toFixed(2)} m x ${metres(Math.max(inside.depth, 0), 8).toFixed(2)} m x ${metres(inside.height, 3.5).toFixed(2)} m`,
    temperature: temperatureCourse(draw, Math.max(-20, warm - 5), Math.min(40, warm + 5)),
  };
  if (draw.chance(0.4)) room.held = draw.chance(0.7);
  if (draw.chance(0.5)) room['air-changes'] = doubtful(draw, `${draw.pick([0, draw.scaled(0.05, 10)]).toFixed(2)} /h`);
  if (draw.chance(0.3)) room.humidity = share(draw.between(0.1, 0.95));
  if (draw.chance(0.2)) room['air-cleaner'] = `${draw.whole(0, 400)} m3/h`;
  if (draw.chance(0.2)) room['heat-loss'] = `${draw.whole(5, 200)} W/K`;
  if (draw.chance(0.2))
    room.background = { particles: `${draw.whole(100, 30_000)} /cm3`, TVOC: `${draw.whole(5, 400)} µg/m3` };
  return room;
}

function drawOutdoors(draw) {
  const middle = draw.between(-18, 38);
  return {
    temperature: temperatureCourse(draw, Math.max(-20, middle - 8), Math.min(40, middle + 8)),
    ...(draw.chance(0.7) ? { wind: `${draw.scaled(0.1, 12).toFixed(2)} m/s` } : {}),
    ...(draw.chance(0.3) ? { humidity: share(draw.between(0.2, 1)) } : {}),
  };
}

function drawDay(draw, machines, doors, warm) {
  const lasts = draw.pick([24, 24, 24, draw.whole(4, 23), draw.whole(25, 48)]) * 3600;
  const openings = Array.from({ length: doors.length === 0 ? 0 : draw.pick([0, 0, 1, 2, 4]) }, () => {
    const open = draw.scaled(20, 1200);
    const at = Math.floor(draw.between(0, lasts - open - 120) / 60) * 60;
    return {
      ...(doors.length > 1 || draw.chance(0.5) ? { door: draw.pick(doors) } : {}),
      at: clock(at),
      for: draw.chance(0.5) ? `${Math.round(open)} s` : duration(draw, open),
    };
  });
  return {
    length: duration(draw, lasts),
    jobs: drawJobs(draw, Object.keys(machines), lasts),
    ...(openings.length > 0 ? { doors: openings } : {}),
    ...(draw.chance(0.15)
      ? { 'room-temperature': temperatureCourse(draw, Math.max(-20, warm - 6), Math.min(40, warm + 6), 0.2) }
      : {}),
    ...(draw.chance(0.04) ? { repeated: true } : {}),
  };
}
