// Does a lamp flicker more than what is held to be a low risk to health?

import { flickerBound } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Lamp, Pulsation } from '../../cabinet/light.ts';
import { causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { steadier } from './edits.ts';
import { flickerLimit } from './limits.ts';

export function flicker(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.light.lamps).flatMap(([id, lamp]) =>
    lamp.flux > 0 ? [flickerOf(cabinet, id, lamp)] : [],
  );
}

function flickerOf(cabinet: Cabinet, id: string, { pulsation }: Lamp): Measure {
  const common = {
    trade: 'light',
    quantity: 'lamp-flicker',
    part: `heats.${id}`,
    title: 'flicker of the lamp',
    unit: 'share',
    cause: causes.pulsatingLight,
    weight: 0.6,
    better: 'lower' as const,
  };
  const missing = missingOf(id, pulsation);
  if (missing !== undefined || pulsation === undefined)
    return {
      ...common,
      ...(missing === undefined ? {} : { missing }),
      limit: flickerLimit(cabinet, 0.08),
      steps: [],
      remedies: steadier(id),
    };
  if (pulsation.by === 'dc')
    return {
      ...common,
      value: 0,
      steps: [{ text: 'it burns steadily' }],
      remedies: [],
    };
  const { frequency } = pulsation;
  const value = pulsation.by === 'pwm' ? (pulsation.duty < 1 ? 1 : 0) : pulsation.ripple;
  const bound = flickerBound(frequency, 'low risk');
  return {
    ...common,
    value,
    // From 1250 Hz on there is no bound: told, not judged.
    ...(bound < 1 || cabinet.limits['lamp-flicker'] !== undefined ? { limit: flickerLimit(cabinet, bound) } : {}),
    get steps(): readonly Step[] {
      return [
        { text: 'its light pulsates', value: frequency, unit: 'frequency', inputs: [`light.lamps.${id}.pulsation`] },
        {
          text: 'depth of modulation',
          value,
          unit: 'share',
          formula: '(most − least)/(most + least)',
          source: pulsation.by === 'pwm' ? 'pulses go down to nothing' : 'ripple of the lamp',
        },
        {
          text: frequency >= 1250 ? 'from 1250 Hz on the recommendation has no bound for low risk' : 'low risk up to',
          value: bound,
          unit: 'share',
          source: 'IEEE Std 1789-2015, 8.1.1, second-hand',
        },
        {
          text: 'no effect was seen up to',
          value: flickerBound(frequency, 'no effect'),
          unit: 'share',
          source: 'the same',
        },
      ];
    },
    get remedies(): readonly Remedy[] {
      return steadier(id);
    },
  };
}

function missingOf(id: string, pulsation: Pulsation | undefined): string | undefined {
  if (pulsation === undefined)
    return `how the lamp is driven is not known: give heats.${id}.dimming, such as { by: dc } or { by: pwm, frequency: 1 kHz, duty: 50 % }`;
  return pulsation.by === 'pwm' && pulsation.frequency === 0
    ? `how fast it pulsates is not known: give heats.${id}.dimming.frequency`
    : undefined;
}
