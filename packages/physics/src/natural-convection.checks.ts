// Natural convection against worked examples of five textbooks, each with the book's own air properties.

import { airConductivity, airPrandtl } from './air.ts';
import {
  nusseltBlock,
  nusseltHotFaceDown,
  nusseltHotFaceUp,
  nusseltHotFaceUpBlend,
  nusseltVerticalPlate,
  nusseltVerticalPlateIntegral,
  nusseltVerticalPlateLaminar,
  rayleighInAir,
  rayleighNumber,
} from './natural-convection.ts';
import type { OutsideCheck } from './outside-check.ts';

const book = (text: string) => ({
  source: `${text} (inputs second-hand, answer recomputed by an independent script)`,
  known: 'second-hand' as const,
});
const SCRIPT = { source: 'the correlation evaluated by an independent script', known: 'independent' } as const;

const holman72 = rayleighNumber(4, 50, 16.5e-6, 0.7, 1 / 308);
const cengel92a = rayleighNumber(0.6, 60, 1.896e-5, 0.7202, 1 / 333);
const cengel92b = rayleighNumber(0.15, 60, 1.896e-5, 0.7202, 1 / 333);
const kreith53 = rayleighNumber(0.25, 200, 2.7e-5, 0.71, 1 / 400);
const holman76 = rayleighNumber(0.4, 50, 17.47e-6, 0.7, 1 / 308);
const lienhard81 = rayleighInAir(0.4, 26, 300);

/** °C of bed and air, Ra over 235 mm / 4, as printed by the script. */
const beds = [
  [60, 25, 5.27e5],
  [60, 35, 3.5e5],
  [100, 25, 8.49e5],
  [110, 45, 6.02e5],
] as const;

export const checks: readonly OutsideCheck[] = [
  {
    ...book('Holman, Heat Transfer, example 7-2'),
    what: 'Nusselt number of a plate of 4 m at 60 °C in 10 °C',
    formula: 'nusseltVerticalPlate',
    expected: 715.307,
    unit: '-',
    tolerance: 3.6,
    got: () => nusseltVerticalPlate(holman72, 0.7),
  },
  {
    ...book('Holman, Heat Transfer, example 7-2'),
    what: 'its heat, 10 m wide',
    formula: 'nusseltVerticalPlate',
    expected: 9603,
    unit: 'W',
    tolerance: 48,
    got: () => ((nusseltVerticalPlate(holman72, 0.7) * 0.02685) / 4) * 40 * 50,
  },
  {
    ...book('Çengel, Heat and Mass Transfer, example 9-2'),
    what: 'Nusselt number of an upright plate of 0.6 m, 90 °C in 30 °C',
    formula: 'nusseltVerticalPlate',
    expected: 113.345,
    unit: '-',
    tolerance: 0.57,
    got: () => nusseltVerticalPlate(cengel92a, 0.7202),
  },
  {
    ...book('Çengel, Heat and Mass Transfer, example 9-2'),
    what: 'its heat',
    formula: 'nusseltVerticalPlate',
    expected: 114.578,
    unit: 'W',
    tolerance: 1,
    got: () => ((nusseltVerticalPlate(cengel92a, 0.7202) * 0.02808) / 0.6) * 0.36 * 60,
  },
  {
    source:
      'Incropera et al., Introduction to Heat Transfer, example 9.2 (glass fire screen), as quoted by a heat-transfer library',
    known: 'second-hand',
    what: 'Nusselt number at Gr = 2.63e9, Pr = 0.69',
    formula: 'nusseltVerticalPlate',
    expected: 147.162,
    unit: '-',
    tolerance: 0.01,
    got: () => nusseltVerticalPlate(0.69 * 2.63e9, 0.69),
  },
  {
    ...book('Çengel, Heat and Mass Transfer, example 9-2'),
    what: 'Nusselt number of the plate lying, hot face down',
    formula: 'nusseltHotFaceDown',
    expected: 15.8752,
    unit: '-',
    tolerance: 0.08,
    got: () => nusseltHotFaceDown(cengel92b),
  },
  {
    ...book('Çengel, Heat and Mass Transfer, example 9-2'),
    what: 'its heat, hot face down',
    formula: 'nusseltHotFaceDown',
    expected: 64.1919,
    unit: 'W',
    tolerance: 0.5,
    got: () => ((nusseltHotFaceDown(cengel92b) * 0.02808) / 0.15) * 0.36 * 60,
  },
  {
    ...book('Kreith et al., Principles of Heat Transfer, 7th ed., example 5.3'),
    what: 'Rayleigh number of a grill of 1 m, 227 °C in 27 °C',
    formula: 'rayleighNumber',
    expected: 7.46431e7,
    unit: '-',
    tolerance: 7.5e5,
    got: () => kreith53,
  },
  {
    source: 'Kreith et al., Principles of Heat Transfer, 7th ed., example 5.3 (printed 25.2)',
    known: 'second-hand',
    what: 'Nusselt number under the grill',
    formula: 'nusseltHotFaceDown',
    expected: 25.2,
    unit: '-',
    tolerance: 0.25,
    got: () => nusseltHotFaceDown(kreith53),
  },
  {
    source: 'Kreith et al., Principles of Heat Transfer, 7th ed., example 5.3 (printed 63.4)',
    known: 'second-hand',
    what: 'Nusselt number over the grill',
    formula: 'nusseltHotFaceUp',
    expected: 63.4,
    unit: '-',
    tolerance: 0.63,
    got: () => nusseltHotFaceUp(kreith53),
  },
  {
    ...book('Kreith et al., Principles of Heat Transfer, 7th ed., example 5.3'),
    what: 'heat of both faces',
    formula: 'nusseltHotFaceUp',
    expected: 2268.16,
    unit: 'W',
    tolerance: 23,
    got: () => ((nusseltHotFaceUp(kreith53) + nusseltHotFaceDown(kreith53)) * 0.032 * 200) / 0.25,
  },
  {
    ...book('Holman, Heat Transfer, example 7-6'),
    what: 'heat of a cube of 0.2 m at 60 °C in 10 °C',
    formula: 'nusseltBlock',
    expected: 51.7919,
    unit: 'W',
    tolerance: 0.26,
    got: () => ((nusseltBlock(holman76) * 0.02685) / 0.4) * 0.24 * 50,
  },
  {
    ...book('Lienhard and Lienhard, A Heat Transfer Textbook, example 8.1'),
    what: 'film of a plate of 0.4 m at 313 K in 287 K, with this program’s own air',
    formula: 'nusseltVerticalPlateIntegral',
    expected: 4.05875,
    unit: 'W/(m²·K)',
    tolerance: 0.041,
    got: () => (nusseltVerticalPlateIntegral(lienhard81, airPrandtl(300)) * airConductivity(300)) / 0.4,
  },
  {
    ...SCRIPT,
    what: 'film of a part 40 mm tall, 70 °C in 35 °C',
    formula: 'nusseltVerticalPlateLaminar',
    expected: 7.54,
    unit: 'W/(m²·K)',
    tolerance: 0.01,
    got: () => {
      const film = 325.65;
      return (
        (nusseltVerticalPlateLaminar(rayleighInAir(0.04, 35, film), airPrandtl(film)) * airConductivity(film)) / 0.04
      );
    },
  },
  ...beds.map(
    ([bed, air, rayleigh]): OutsideCheck => ({
      ...SCRIPT,
      what: `Rayleigh number of a bed of 235 mm at ${bed} °C in ${air} °C`,
      formula: 'rayleighInAir',
      expected: rayleigh,
      unit: '-',
      tolerance: rayleigh * 0.0025,
      got: () => rayleighInAir(0.235 / 4, bed - air, (bed + air) / 2 + 273.15),
    }),
  ),
  {
    ...SCRIPT,
    what: 'Nusselt number of a bed of 235 mm at 60 °C in 25 °C',
    formula: 'nusseltHotFaceUpBlend',
    expected: 12.7,
    unit: '-',
    tolerance: 0.06,
    got: () => nusseltHotFaceUpBlend(5.27e5, 0.705),
  },
];
