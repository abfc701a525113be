// Limits of light, each with its source. A person may overrule any of them under `limits:`.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Camera } from '../../cabinet/light.ts';
import type { Limit } from '../measure.ts';
import { limitFor } from '../person-limit.ts';

const OWN = 'judgement, no printed source';

/** On the print, for the eye: what workplaces give to rough work, lx. */
export function brightnessLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'brightness',
    kind: 'at-least',
    value: 200,
    source: 'EN 12464-1, rough assembly 200 lx (medium 300, fine 500), as lamp makers list it, read',
    standing: 'trade',
  });
}

type Task = Camera['task'];

const tasks: Readonly<Record<Task, { readonly lux: number; readonly source: string }>> = {
  'time-lapse': { lux: 20, source: `stills want 20 to 50 lx; ${OWN}` },
  live: {
    lux: 100,
    source: `a poorly lit room has 100 lx, and camera guides ask for 200 lx (read); ${OWN} between them`,
  },
  watching: { lux: 300, source: `telling a first layer's faults wants 300 to 500 lx; ${OWN}` },
};

/** On what a camera sees, by what its pictures are for. */
export function cameraLightLimit(cabinet: Cabinet, { task }: Camera): Limit {
  const { lux, source } = tasks[task];
  return limitFor(cabinet, { id: 'camera-light', kind: 'at-least', value: lux, source, standing: 'trade' });
}

/** Where no lamp shines straight: below it a picture has black holes, whatever the exposure. */
export function shadowLightLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'shadow-light',
    kind: 'at-least',
    value: 20,
    source: `shadows need what a still picture needs, 20 lx; ${OWN}`,
    standing: 'trade',
  });
}

/** Least over mean, on the bed. */
export function evennessLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'light-evenness',
    kind: 'at-least',
    value: 0.4,
    source: 'uniformity of 0.4, as EN 12464-1 asks of immediate surroundings and simple work, from memory',
    standing: 'trade',
  });
}

const longest: Readonly<Record<Task, readonly [seconds: number, why: string]>> = {
  'time-lapse': [0.25, 'a still part may take 1/4 s'],
  live: [1 / 15, '15 pictures a second'],
  watching: [1 / 30, '30 pictures a second'],
};

/** The shutter that was given, or what the use of the pictures bears. */
export function exposureLimit(cabinet: Cabinet, { task, shutter }: Camera): Limit {
  const [seconds, why] = longest[task];
  return limitFor(cabinet, {
    id: 'exposure-time',
    kind: 'at-most',
    value: shutter > 0 ? shutter : seconds,
    source: shutter > 0 ? 'the shutter that the file gives' : `${why}; ${OWN}`,
    standing: 'trade',
  });
}

const blurs: Readonly<Partial<Record<Task, readonly [metres: number, why: string]>>> = {
  live: [0.005, 'a nozzle smeared over 5 mm is still seen to move'],
  watching: [0.001, 'two or three lines of a 0.4 mm nozzle'],
};

/** None for stills taken between moves. */
export function blurLimit(cabinet: Cabinet, { task }: Camera): Limit | undefined {
  const found = blurs[task];
  const own = cabinet.limits['motion-blur'];
  if (found === undefined && own === undefined) return undefined;
  const [value, why] = found ?? [own!, ''];
  return limitFor(cabinet, { id: 'motion-blur', kind: 'at-most', value, source: `${why}; ${OWN}`, standing: 'trade' });
}

/** Brightest row less darkest, as a share of the mean. */
export function bandingLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'banding',
    kind: 'at-most',
    value: 0.05,
    source: `even stripes show from 1 to 2 % on; 5 % disturbs; ${OWN}`,
    standing: 'trade',
  });
}

/** All of the print, from the bed to its top. */
export function seenLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'print-seen',
    kind: 'at-least',
    value: 0.999,
    source: 'the whole print',
    standing: 'trade',
  });
}

/** Share of a job. */
export function litLimit(cabinet: Cabinet): Limit {
  return limitFor(cabinet, {
    id: 'lit-while-printing',
    kind: 'at-least',
    value: 0.999,
    source: 'a camera sees nothing without light',
    standing: 'trade',
  });
}

/** Depth of modulation that the recommendation calls a low risk to health. */
export function flickerLimit(cabinet: Cabinet, value: number): Limit {
  return limitFor(cabinet, {
    id: 'lamp-flicker',
    kind: 'at-most',
    value,
    source:
      'IEEE Std 1789-2015, 8.1.1, low risk: 0.025 f % below 90 Hz, 0.08 f % to 1250 Hz, from there no bound; second-hand. Sensitive people differ',
    standing: 'living room',
  });
}
