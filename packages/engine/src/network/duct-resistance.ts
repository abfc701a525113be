// A duct as the two-term resistance that air paths are made of.

import {
  airViscosity,
  ductPressure,
  HOSE_FRICTION_MULTIPLIER,
  REFERENCE_DENSITY,
  type Resistance,
} from '@stillair/physics';

/** Speeds between which a cabinet's ducts work, m/s: the fit is exact at both, within 4 % between them. */
const SLOW = 0.7;
const FAST = 2.8;
const DUCT_AIR = 305;

/**
 * Wall friction of a round duct as dp = linear Q + quadratic Q², fitted at two speeds.
 *
 * @param diameter - m, above 0.
 * @param length - m, 0 or more.
 * @param flexible - Corrugated hose, stretched: its friction is about three times a smooth wall's (2 to 4, from memory).
 */
export function ductResistance(diameter: number, length: number, flexible: boolean): Resistance {
  const area = (Math.PI / 4) * diameter ** 2;
  const duct = {
    length,
    area,
    diameter,
    roughness: 0,
    frictionMultiplier: flexible ? HOSE_FRICTION_MULTIPLIER.stretched.central : 1,
    loss: 0,
  };
  const mu = airViscosity(DUCT_AIR);
  const perFlow = (speed: number) => ductPressure(duct, speed * area, REFERENCE_DENSITY, mu) / (speed * area);
  const quadratic = (perFlow(FAST) - perFlow(SLOW)) / ((FAST - SLOW) * area);
  return quadratic >= 0
    ? { linear: perFlow(SLOW) - quadratic * SLOW * area, quadratic }
    : { linear: (perFlow(FAST) + perFlow(SLOW)) / 2, quadratic: 0 };
}
