import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isFault, parsePlace, parseQuantity, parseRange, parseSizes, type Quantity } from './quantity.ts';
import { type KindName, kindNames, kindOf } from './unit-table.ts';

describe('quantities', () => {
  it.each<[KindName, string, number]>([
    ['length', '820 mm', 0.82],
    ['length', '82cm', 0.82],
    ['length', '0.82 m', 0.82],
    ['length', '32 in', 0.8128],
    ['length', '3 ft 2 in', 0.9652],
    ['length', `3' 2"`, 0.9652],
    ['length', '1/4 in', 0.00635],
    ['length', '3 1/4 in', 0.08255],
    ['length', '-5 mm', -0.005],
    ['area', '3 cm2', 3e-4],
    ['area', '3 cm²', 3e-4],
    ['area', '10 sq in', 0.0064516],
    ['volume', '40 l', 0.04],
    ['mass', '250 g', 0.25],
    ['mass', '2 lb', 0.90718474],
    ['mass', '16 oz', 0.45359237],
    ['temperature', '35 °C', 308.15],
    ['temperature', '35 degC', 308.15],
    ['temperature', '35C', 308.15],
    ['temperature', '95 °F', 308.15],
    ['temperature', '300 K', 300],
    ['temperature-difference', '2 °C', 2],
    ['temperature-difference', '9 °F', 5],
    ['duration', '2 h 30 min', 9000],
    ['duration', '2h30min', 9000],
    ['duration', '90 s', 90],
    ['duration', '1 d', 86400],
    ['flow', '36 m3/h', 0.01],
    ['flow', '36 m³/h', 0.01],
    ['flow', '10 l/s', 0.01],
    ['flow', '18 cfm', 18 * 0.00047194745],
    ['pressure', '0.12 inH2O', 29.890669],
    ['specific-energy', '18 MJ/kg', 18e6],
    ['specific-energy', '7739 BTU/lb', 18.000914e6],
    ['fire-heat', '2.67 MJ', 2.67e6],
    ['pressure', '2 mmH2O', 19.6133],
    ['stress', '8 N/mm2', 8e6],
    ['stress', '8 N/mm²', 8e6],
    ['stress', '60 kPa', 60_000],
    ['stress', '10 GPa', 1e10],
    ['stress', '1000 psi', 6_894_757.293],
    ['force', '2 kN', 2000],
    ['force', '10 lbf', 44.482216],
    ['acceleration', '1500 mm/s2', 1.5],
    ['acceleration', '3 m/s²', 3],
    ['acceleration', '10 in/s2', 0.254],
    ['frequency', '12 Hz', 12],
    ['frequency', '1800 rpm', 30],
    ['pressure', '1.5 kPa', 1500],
    ['power', '1.2 kW', 1200],
    ['speed', '30 ft/min', 0.1524],
    ['u-value', '2.5 W/(m2 K)', 2.5],
    ['u-value', '2.5 W/(m² K)', 2.5],
    ['u-value', '2.5 W/m²K', 2.5],
    ['u-value', '2.5 W/m2/K', 2.5],
    ['u-value', '2.5 W/(m²·K)', 2.5],
    ['heat-loss', '16 W/K', 16],
    ['conductivity', '0.13 W/(m K)', 0.13],
    ['specific-heat', '1.6 kJ/(kg K)', 1600],
    ['share', '50 %', 0.5],
    ['number', '0.61', 0.61],
    ['water-rate', '3.6 g/h', 1e-6],
    ['air-change', '0.5 /h', 0.5],
    ['air-change', '0.5 1/h', 0.5],
    ['air-change', '0.5 per h', 0.5],
    ['loss-rate', '3.6 /h', 0.001],
    ['particle-rate', '1e10 /min', 1e10 / 60],
    ['vapour-rate', '60 µg/min', 1],
    ['energy-price', '0.36 EUR/kWh', 1e-7],
    ['energy-price', '36 ct/kWh', 1e-7],
    ['money', '12.5', 12.5],
    ['electric-current', '16 A', 16],
    ['electric-current', '30 mA', 0.03],
    ['voltage', '230 V', 230],
    ['angle', '90°', Math.PI / 2],
    ['angle', '45 deg', Math.PI / 4],
    ['force', '2 lbf', 8.896443],
    ['stress', '30 MPa', 3e7],
    ['vapour-rate', '60 ug/min', 1],
    ['vapour-rate', '3.6 mg/h', 1],
    ['particle-concentration', '3000 /cm3', 3e9],
    ['mass-concentration', '30 µg/m3', 30],
    ['mass-concentration', '0.3 mg/m³', 300],
    ['sound-level', '35 dB(A)', 35],
    ['frequency', '125 Hz', 125],
    ['frequency', '2 kHz', 2000],
    ['illuminance', '300 lx', 300],
    ['illuminance', '30 fc', 322.9173],
    ['luminous-flux', '1.2 klm', 1200],
    ['exposure-time', '20 ms', 0.02],
    ['frequency', '25 kHz', 25_000],
    ['angle', '90°', Math.PI / 2],
    ['angle', '45 deg', Math.PI / 4],
  ])('exact: %s %j', (kind, text, expected) => {
    const read = parseQuantity(kind, text);
    expect(read).not.toHaveProperty('mend');
    expect((read as Quantity).value / expected).toBeCloseTo(1, 6);
  });

  it.each<[KindName, string, string]>([
    ['length', '820', 'unit-missing'],
    ['length', '45 kg', 'unit-wrong'],
    ['length', '45 furlong', 'unit-unknown'],
    ['length', '0,82 m', 'decimal-comma'],
    ['length', '', 'number-wrong'],
    ['length', 'wide', 'number-wrong'],
    ['length', '1.2.3 m', 'number-wrong'],
    ['length', '5 mm 3 cm', 'several-quantities'],
    ['temperature', '20 °C 3 °C', 'several-quantities'],
    ['temperature', '21', 'unit-missing'],
    ['share', '0.5', 'unit-missing'],
    ['number', '0.9 m', 'unit-wrong'],
    ['flow', '40 to 20 m3/h', 'range-wrong'],
    ['length', '1e999 mm', 'number-too-large'],
  ])('exact: %s %j is refused as %s', (kind, text, code) => {
    expect(parseQuantity(kind, text)).toMatchObject({ code });
  });

  it('exact: a fault points at the characters that are wrong', () => {
    expect(parseQuantity('length', '3 ft 2 kg')).toMatchObject({ code: 'unit-wrong', at: 5, length: 4 });
    expect(parseQuantity('temperature', '35 °C ± 2 h')).toMatchObject({ code: 'unit-wrong', at: 8, length: 3 });
    expect(parseQuantity('length', '45 kg')).toMatchObject({ mend: 'did you mean 45 mm?' });
  });

  it('exact: spreads', () => {
    expect(parseQuantity('area', '3 cm2 ± 30 %')).toMatchObject({ low: 2.1e-4, high: 3.9e-4 });
    expect(parseQuantity('sound-level', '48 dB(A) (45 to 53 dB(A))')).toEqual({ value: 48, low: 45, high: 53 });
    expect(parseQuantity('temperature', '35 °C ± 2 K')).toMatchObject({ value: 308.15, low: 306.15, high: 310.15 });
    expect(parseQuantity('temperature', '35 °C +- 2 °C')).toMatchObject({ low: 306.15, high: 310.15 });
    expect(parseQuantity('flow', '36 to 72 m3/h')).toMatchObject({ value: 0.015, low: 0.01, high: 0.02 });
    expect(parseQuantity('flow', '45 (36 to 72) m3/h')).toMatchObject({ value: 0.0125, low: 0.01, high: 0.02 });
    expect(parseQuantity('flow', '45 m3/h (36 to 72 m3/h)')).toMatchObject({ value: 0.0125, low: 0.01, high: 0.02 });
    expect(parseQuantity('u-value', '1.3 W/(m2 K) (1 to 2 W/(m2 K))')).toEqual({ value: 1.3, low: 1, high: 2 });
    expect(parseQuantity('u-value', '1.3 (1 to 2) W/(m2 K)')).toEqual({ value: 1.3, low: 1, high: 2 });
    expect(parseQuantity('particle-rate', '1e8 /s to 1e10 /s')).toMatchObject({ value: 1e9 });
  });

  it('exact: stretches, sizes and places', () => {
    expect(parseRange('length', '0 mm to 520 mm')).toEqual([0, 0.52]);
    expect(parseRange('length', '0 to 52 cm')).toEqual([0, 0.52]);
    expect(parseRange('length', '520 mm')).toMatchObject({ code: 'range-wrong' });
    expect(parseRange('length', '520 mm to 0 mm')).toMatchObject({ code: 'range-wrong' });
    expect(parseSizes('800 mm x 600 mm x 1750 mm', 3)).toEqual([0.8, 0.6, 1.75]);
    expect(parseSizes('4 m × 3.5 m × 2.5 m', 3)).toEqual([4, 3.5, 2.5]);
    expect(parseSizes('800x600x1750mm', 3)).toEqual([0.8, 0.6, 1.75]);
    expect(parseSizes('800 mm x 600 mm', 3)).toMatchObject({ code: 'size-wrong' });
    expect(parsePlace('400 mm, -200 mm', 2)).toEqual([0.4, -0.2]);
  });

  it('property: whatever the text, the answer is a finite number or a fault with a place inside the text', () => {
    fc.assert(
      fc.property(fc.constantFrom(...kindNames), fc.string({ unit: 'binary' }), (kind, text) => {
        const read = parseQuantity(kind, text);
        if (isFault(read)) expect(read.at).toBeLessThanOrEqual(text.length);
        else expect(Number.isFinite(read.value)).toBe(true);
      }),
    );
  });

  it('property: every unit of every kind reads a number back in proportion to its factor', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kindNames),
        fc.nat(),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        (kind, pick, number) => {
          const units = Object.entries(kindOf(kind).units);
          const [unit, { factor, before = 0 }] = units[pick % units.length]!;
          const read = parseQuantity(kind, `${number} ${unit}`);
          expect(read).not.toHaveProperty('mend');
          expect((read as Quantity).value / ((number + before) * factor)).toBeCloseTo(1, 10);
        },
      ),
    );
  });
});
