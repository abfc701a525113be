// Machines of every kind, with whatever is different about each, their jobs, and what else gives heat.

import { drawControl, drawWindows } from './switches.mjs';
import { clock, doubtful, duration, flow, share, temperature } from './written.mjs';

const open = [
  'fixed bed 120',
  'moving bed 180',
  'moving bed 220',
  'moving bed 300',
  'moving bed 350',
  'fixed-frame 250',
  'delta 200',
];
const materials = ['PLA', 'PETG', 'ABS', 'ASA', 'HIPS', 'PA', 'PC', 'TPU'];

export function drawMachines(draw, bays, count) {
  return Object.fromEntries(
    Array.from({ length: count }, (_, index) => {
      const chambered = draw.chance(0.2);
      const machine = { kind: chambered ? 'chambered 250' : draw.pick(open) };
      if (bays.length > 1 || draw.chance(0.5)) machine.bay = draw.pick(bays).id;
      const bed = {};
      if (draw.chance(0.2)) bed.power = `${draw.whole(15, 80)} W`;
      if (draw.chance(0.2)) bed.underside = draw.pick(['foam 5 mm', 'foam 20 mm', 'bare', 'bare 0.9']);
      if (draw.chance(0.1)) bed.emissivity = Number(draw.between(0.05, 0.95).toFixed(2));
      if (Object.keys(bed).length > 0) machine.bed = bed;
      if (draw.chance(0.2)) machine['hot-end'] = doubtful(draw, `${draw.whole(5, 40)} W`);
      if (draw.chance(0.2)) machine.motors = `${draw.whole(5, 40)} W`;
      if (draw.chance(0.3)) machine['electronics-inside'] = draw.chance(0.5);
      if (draw.chance(0.3)) machine.supply = { inside: draw.chance(0.5), efficiency: share(draw.between(0.7, 0.95)) };
      if (draw.chance(0.1)) machine.standby = `${draw.whole(0, 20)} W`;
      if (chambered && draw.chance(0.6)) machine.chamber = drawChamber(draw);
      return [`m${index + 1}`, machine];
    }),
  );
}

function drawChamber(draw) {
  return {
    ...(draw.chance(0.5) ? { leak: `${draw.scaled(0.5, 60).toFixed(1)} cm2` } : {}),
    ...(draw.chance(0.5) ? { exhaust: draw.chance(0.3) ? '0 m3/h' : flow(draw, draw.between(3, 30)) } : {}),
    ...(draw.chance(0.4)
      ? { recirculation: flow(draw, draw.between(2, 20)), 'recirculation-filter': { particles: '90 %', TVOC: '20 %' } }
      : {}),
    ...(draw.chance(0.3)
      ? { heater: `${draw.whole(50, 300)} W`, 'heater-set': temperature(draw, draw.between(35, 60)) }
      : {}),
  };
}

/** Jobs one after another on each machine; all end before the day does. */
export function drawJobs(draw, machines, length) {
  const jobs = {};
  for (const machine of machines) {
    let at = draw.between(0, 0.4 * length);
    for (let k = draw.whole(0, 3); k > 0; k -= 1) {
      const start = Math.ceil(at / 60) * 60;
      const lasts = Math.floor(draw.scaled(600, 0.6 * length) / 60) * 60;
      if (start + lasts > length - 60) break;
      jobs[`job${Object.keys(jobs).length + 1}`] = {
        machine,
        material: draw.pick(materials),
        start: clock(start),
        for: duration(draw, lasts),
        ...(draw.chance(0.2) ? { bed: temperature(draw, draw.between(30, 120)) } : {}),
        ...(draw.chance(0.1) ? { nozzle: temperature(draw, draw.between(190, 300)) } : {}),
        ...(draw.chance(0.3) ? { mass: `${draw.whole(5, 400)} g` } : {}),
      };
      at = start + lasts + draw.chance(0.3) * draw.between(0, 7200);
    }
  }
  return jobs;
}

export function drawHeats(draw, context) {
  const { bays } = context;
  const heats = {};
  for (let k = draw.whole(0, 2); k > 0; k -= 1) {
    const id = `heat${k}`;
    const bay = draw.pick(bays);
    const by = () => drawControl(draw, context);
    // A heater that holds its air within a kelvin switches thousands of times a day, so that many of them take all the time.
    const heater = draw.chance(0.12);
    const other = draw.pick([
      () => ({ kind: 'LED strip 10 W', bay, control: by() }),
      () => ({ kind: 'filament drier 50 W', bay, ...(draw.chance(0.5) ? { control: by() } : {}) }),
      () => ({ kind: 'small computer', bay }),
    ]);
    heats[id] = heater ? heaterIn(draw, bay) : other();
  }
  return heats;
}

function heaterIn(draw, bay) {
  return {
    what: 'heater',
    bay,
    power: `${draw.whole(30, 300)} W`,
    holds: temperature(draw, draw.between(30, 55)),
    ...(draw.chance(0.6) ? { control: { timer: drawWindows(draw) } } : {}),
  };
}
