// A wire's cross-section as people write it: square millimetres, or an American gauge.

import { gaugeArea } from '@stillair/physics';
import { fault, isFault, parseQuantity, type TextFault } from '../units/quantity.ts';
import type { Conductor } from './power.ts';
import { fromText, type Schema } from './shape.ts';

const FORM = 'a cross-section such as 0.75 mm2 or 18 AWG';

/** Thinnest and thickest that a cabinet's low-voltage side may have, m². */
const BOUNDS = [0.05e-6, 50e-6] as const;

/**
 * The conductor that a text describes.
 *
 * @example A gauge
 * ```ts
 * parseConductor('18 AWG').gauge; // => 18
 * ```
 */
export function parseConductor(text: string): Conductor | TextFault {
  const gauge = /^\s*(?:AWG\s*(\d+)|(\d+)\s*AWG)\s*$/i.exec(text);
  if (gauge !== null) {
    const number = Number(gauge[1] ?? gauge[2]);
    return within({ area: gaugeArea(Math.min(number, 40)), gauge: number }, text);
  }
  const area = parseQuantity('area', text);
  if (isFault(area))
    return {
      ...area,
      allowed: FORM,
      ...(area.code === 'unit-missing' ? { mend: `write ${text.trim()} mm2 or ${text.trim()} AWG` } : {}),
    };
  return within({ area: area.value }, text);
}

function within(conductor: Conductor, text: string): Conductor | TextFault {
  const { area } = conductor;
  if (area >= BOUNDS[0] && area <= BOUNDS[1]) return conductor;
  const what = `"${text}" is no cross-section of a low-voltage wire`;
  return fault('value-out-of-bounds', 0, text.length, what, `${FORM}, from 0.05 to 50 mm2`, 'measure it again');
}

export function conductor(about: string): Schema<Conductor> {
  return fromText((input) => parseConductor(String(input)), false, about, FORM);
}
