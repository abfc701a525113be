// What switches a fan, a lamp, a heater: every kind of control, with hysteresis from a hair to many kelvin.

import { clock, duration, share, temperature } from './written.mjs';

export function drawWindows(draw) {
  return Array.from({ length: draw.whole(1, 3) }, () => {
    const start = draw.whole(0, 1300) * 60;
    return `${clock(start)} to ${clock(start + draw.whole(5, 130) * 60)}`;
  });
}

/** `warm` is about how many degrees Celsius there are to switch at. */
export function drawControl(draw, { sensors, bays, machines, warm }) {
  const thermometer = () => draw.pick(draw.chance(0.5) && sensors.length > 0 ? sensors : bays);
  const degrees = () => warm + draw.between(-1, 9);
  const kinds = {
    always: () => 'always',
    never: () => 'never',
    job: () => 'job',
    timer: () => ({ timer: draw.chance(0.3) ? drawWindows(draw)[0] : drawWindows(draw) }),
    jobs: () =>
      machines.length === 0
        ? 'job'
        : {
            job: draw.chance(0.3) ? draw.pick(machines) : machines.filter(() => draw.chance(0.7)).concat(machines[0]),
            ...(draw.chance(0.4) ? { lead: duration(draw, draw.between(0, 1200)) } : {}),
            ...(draw.chance(0.6) ? { 'run-on': duration(draw, draw.between(0, 7200)) } : {}),
          },
    thermostat: () => {
      const on = degrees();
      return {
        thermostat: thermometer(),
        on: `${on.toFixed(2)} °C`,
        off: `${(on - draw.scaled(0.3, 5)).toFixed(2)} °C`,
      };
    },
    proportional: () => {
      const from = degrees();
      return {
        proportional: thermometer(),
        from: temperature(draw, from),
        to: temperature(draw, from + draw.between(1, 12)),
        ...(draw.chance(0.7) ? { low: share(draw.between(0.1, 0.6)) } : {}),
        ...(draw.chance(0.4) ? { high: share(draw.between(0.65, 1)) } : {}),
      };
    },
    stages: () => {
      const first = degrees();
      const steps = Array.from({ length: draw.whole(1, 3) }, (_, index) => {
        const on = first + index * draw.between(0.6, 6);
        return {
          on: `${on.toFixed(2)} °C`,
          off: `${(on - draw.scaled(0.3, 4)).toFixed(2)} °C`,
          speed: share(Math.min(1, 0.3 + 0.3 * index + draw.between(0, 0.2))),
        };
      });
      return { stages: thermometer(), steps };
    },
    air: () => {
      const vapour = draw.chance(0.6);
      const on = vapour ? draw.scaled(60, 2000) : draw.scaled(2000, 200_000);
      const unit = vapour ? 'µg/m3' : '/cm3';
      return {
        'air-quality': vapour ? 'TVOC' : 'particles',
        at: draw.pick(['room', ...bays]),
        on: `${on.toFixed(0)} ${unit}`,
        off: `${(on * draw.between(0.5, 0.95)).toFixed(0)} ${unit}`,
      };
    },
  };
  const often = ['always', 'always', 'job', 'timer', 'jobs', 'thermostat', 'thermostat', 'thermostat'];
  return kinds[draw.pick([...often, 'thermostat', 'proportional', 'stages', 'air', 'never'])]();
}
