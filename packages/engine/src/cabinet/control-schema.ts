// When something runs: always, by the clock, with a job, by temperature, by what the air carries.

import { isFault, parseQuantity } from '../units/quantity.ts';
import { concentrationKind, contaminants } from './contaminants.ts';
import { byKey, listOf, name, oneOrMore, quantity, type Schema, shortOr, text, thing, window, word } from './shape.ts';
import type { ControlSpec } from './spec.ts';

const temperature = (about: string): ReturnType<typeof quantity> =>
  quantity('temperature', about, { from: 173.15, to: 673.15 });
const speed = (about: string): ReturnType<typeof quantity> => quantity('share', about, { from: 0, to: 1 });

export function control(about: string): Schema<ControlSpec> {
  const short = word(['always', 'never', 'job'], about).transform((kind): ControlSpec => ({ kind }));
  const timer = thing(
    { timer: oneOrMore(window('hours in which it runs'), 'hours in which it runs') },
    'by the clock',
  ).transform(({ timer: windows }): ControlSpec => ({ kind: 'timer', windows }));
  const job = thing(
    {
      job: oneOrMore(name('machine'), 'machines whose jobs switch it on'),
      lead: quantity('duration', 'runs this long before the job', { from: 0 }).optional(),
      'run-on': quantity('duration', 'runs this long after the job', { from: 0 }).optional(),
    },
    'with a job',
  ).transform(({ job: machines, ...rest }): ControlSpec => ({ kind: 'job', machines, ...rest }));
  const thermostat = thing(
    { thermostat: name('sensor'), on: temperature('on at or above'), off: temperature('off at or below') },
    'by temperature',
  ).transform(({ thermostat: sensor, ...rest }): ControlSpec => ({ kind: 'thermostat', sensor, ...rest }));
  const proportional = thing(
    {
      proportional: name('sensor'),
      from: temperature('slowest at or below'),
      to: temperature('fastest at or above'),
      low: speed('slowest speed').optional(),
      high: speed('fastest speed').optional(),
    },
    'faster as it gets warmer',
  ).transform(({ proportional: sensor, ...rest }): ControlSpec => ({ kind: 'proportional', sensor, ...rest }));
  const step = thing(
    { on: temperature('on at or above'), off: temperature('off at or below'), speed: speed('speed of this step') },
    'one step',
  );
  const stages = thing({ stages: name('sensor'), steps: listOf(step, 'steps of speed') }, 'in steps').transform(
    ({ stages: sensor, steps }): ControlSpec => ({ kind: 'stages', sensor, steps }),
  );
  const long = byKey(
    { timer, job, thermostat, 'air-quality': airQuality(), proportional, stages },
    'what switches it',
    about,
  );
  return shortOr(short, long, about) as Schema<ControlSpec>;
}

/** The unit of its limits depends on the contaminant, so that they are read after it. */
function airQuality(): Schema<ControlSpec> {
  return thing(
    {
      'air-quality': word(contaminants, 'what is measured'),
      at: name('room or bay in which it is measured'),
      on: text('on at or above'),
      off: text('off at or below'),
    },
    'by what the air carries',
  ).transform((spec, context): ControlSpec => {
    const contaminant = spec['air-quality'];
    const limit = (key: 'on' | 'off'): { value: number } => {
      const read = parseQuantity(concentrationKind(contaminant), spec[key]);
      if (!isFault(read)) return read;
      context.issues.push({ code: 'custom', path: [key], message: JSON.stringify(read), input: spec[key] });
      return { value: 0 };
    };
    return { kind: 'air-quality', contaminant, place: spec.at, on: limit('on'), off: limit('off') };
  }) as Schema<ControlSpec>;
}
