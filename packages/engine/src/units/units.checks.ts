// Conversion factors against a printed table.

import type { OutsideCheck } from '@stillair/physics';
import { parseQuantity, type Quantity } from './quantity.ts';
import type { KindName } from './unit-table.ts';

const SOURCE = 'NIST Special Publication 811 (2008), appendix B.8';

/** Kind, text, value in SI, unit, half of the last printed digit. */
const rows: readonly (readonly [KindName, string, number, string, number])[] = [
  ['length', '1 in', 2.54e-2, 'm', 1e-12],
  ['length', '1 ft', 3.048e-1, 'm', 1e-12],
  ['area', '1 ft2', 9.290304e-2, 'm2', 1e-12],
  ['area', '1 in2', 6.4516e-4, 'm2', 1e-12],
  ['volume', '1 ft3', 2.831685e-2, 'm3', 5e-9],
  ['mass', '1 lb', 4.535924e-1, 'kg', 5e-8],
  ['mass', '1 oz', 2.834952e-2, 'kg', 5e-9],
  ['temperature', '68 °F', (68 + 459.67) / 1.8, 'K', 1e-9],
  ['temperature', '20 °C', 293.15, 'K', 1e-9],
  ['temperature-difference', '1 °F', 5.555556e-1, 'K', 5e-8],
  ['flow', '1 cfm', 4.719474e-4, 'm3/s', 5e-11],
  ['pressure', '1 inH2O', 2.490889e2, 'Pa', 5e-5],
  ['pressure', '1 mmH2O', 9.80665, 'Pa', 1e-9],
  ['pressure', '1 mbar', 100, 'Pa', 1e-9],
  ['acceleration', '1 ft/s2', 3.048e-1, 'm/s2', 1e-12],
  ['acceleration', '1 in/s2', 2.54e-2, 'm/s2', 1e-12],
  ['power', '1 BTU/h', 2.930711e-1, 'W', 5e-8],
  ['energy', '1 kWh', 3.6e6, 'J', 1e-3],
  ['energy', '1 BTU', 1.055056e3, 'J', 5e-4],
  ['speed', '1 ft/min', 5.08e-3, 'm/s', 1e-12],
  ['u-value', '1 BTU/(h ft2 °F)', 5.678263, 'W/(m2 K)', 5e-7],
  ['density', '1 lb/ft3', 16.01846, 'kg/m3', 5e-6],
  ['force', '1 lbf', 4.448222, 'N', 5e-7],
  ['specific-energy', '1 BTU/lb', 2.326e3, 'J/kg', 5e-1],
  ['stress', '1 psi', 6.894757e3, 'Pa', 5e-4],
  ['illuminance', '1 fc', 1.076391e1, 'lx', 5e-6],
];

export const checks: readonly OutsideCheck[] = rows.map(([kind, text, expected, unit, tolerance]) => ({
  what: `${text} in SI`,
  formula: 'parseQuantity',
  source: SOURCE,
  known: 'memory',
  expected,
  unit,
  tolerance,
  got: () => (parseQuantity(kind, text) as Quantity).value,
}));
