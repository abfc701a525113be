import { carbonEquilibrium, solvents } from '@stillair/physics';
import { expect, it } from 'vitest';
import { carbonLaw } from './carbon-law.ts';

it('cross: the tabulated isotherm is that of the physics, for every vapour, load and temperature', () => {
  for (const [name, solvent] of Object.entries(solvents)) {
    const law = carbonLaw(name, 1e-9);
    for (const kelvin of [220, 246.2, 273.15, 291.7, 298.15, 310.33, 333.1, 371.9, 460]) {
      for (const load of [1e-9, 1e-6, 3e-5, 1e-3, 0.02, 0.2, 0.6]) {
        const exact = carbonEquilibrium(solvent, load, kelvin) / 1e-9;
        expect(law(load, kelvin) / exact, `${name} ${kelvin} ${load}`).toBeCloseTo(1, 6);
      }
    }
  }
});

it('limit: clean carbon, or carbon that rounding made cleaner than clean, gives nothing back', () => {
  expect(carbonLaw('styrene', 1e-9)(0, 300)).toBe(0);
  expect(carbonLaw('styrene', 1e-9)(-1e-20, 300)).toBe(0);
});
