import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatBand, formatClock, formatDuration, formatQuantity } from './format.ts';
import { parseQuantity, type Quantity } from './quantity.ts';
import { type KindName, kindNames } from './unit-table.ts';

describe('texts for people', () => {
  it.each<[KindName, number, string, string]>([
    ['length', 0.82, '820 mm', '32.3 in'],
    ['length', 0.0007, '0.7 mm', '0.028 in'],
    ['length', 12, '12 m', '39.4 ft'],
    ['area', 0.005, '50 cm²', '7.8 in²'],
    ['area', 2.5e-7, '0.25 mm²', '3.88e-4 in²'],
    ['temperature', 309.55, '36.4 °C', '97.5 °F'],
    ['temperature-difference', 5, '5 K', '9 °F'],
    ['flow', 30 / 3600, '30 m³/h', '17.7 cfm'],
    ['pressure', 29.89, '29.9 Pa', '0.12 inH2O'],
    ['pressure', 0.0123, '0.012 Pa', '4.94e-5 inH2O'],
    ['length', 0.00015, '0.15 mm', '0.0059 in'],
    ['mass', 0.25, '250 g', '8.8 oz'],
    ['power', 1234.5, '1235 W', '1235 W'],
    ['energy', 3.6e6, '1 kWh', '1 kWh'],
    ['share', 0.9995, '100 %', '100 %'],
    ['particle-concentration', 3e9, '3000 /cm³', '3000 /cm³'],
    ['mass-concentration', 30, '30 µg/m³', '30 µg/m³'],
    ['mass-concentration', 8.9e6, '8.9 g/m³', '8.9 g/m³'],
    ['sound-level', 35.4, '35 dB(A)', '35 dB(A)'],
    ['frequency', 125, '125 Hz', '125 Hz'],
    ['frequency', 2000, '2 kHz', '2 kHz'],
    ['speed', 0.2, '0.2 m/s', '39 ft/min'],
    ['energy-price', 0.3 / 3.6e6, '0.3 /kWh', '0.3 /kWh'],
    ['money', 0.474, '0.47', '0.47'],
    ['electric-current', 9.8, '9.8 A', '9.8 A'],
    ['electric-current', 0.009, '9 mA', '9 mA'],
    ['voltage', 0.39, '390 mV', '390 mV'],
    ['angle', Math.PI / 3, '60 °', '60 °'],
    ['force', 2.11, '2.1 N', '0.47 lbf'],
    ['stress', 3.3e9, '3300 N/mm²', '478625 psi'],
    ['illuminance', 300, '300 lx', '27.9 fc'],
    ['luminous-flux', 850, '850 lm', '850 lm'],
    ['exposure-time', 0.02, '20 ms', '20 ms'],
    ['exposure-time', 2, '2 s', '2 s'],
    ['frequency', 25_000, '25 kHz', '25 kHz'],
    ['number', Number.NaN, 'unknown', 'unknown'],
  ])('exact: %s %d is %s or %s', (kind, value, metric, imperial) => {
    expect(formatQuantity(kind, value)).toBe(metric);
    expect(formatQuantity(kind, value, 'imperial')).toBe(imperial);
  });

  it('exact: bands share their unit', () => {
    expect(formatBand('temperature', 307.15, 312.25)).toBe('34 to 39.1 °C');
    expect(formatBand('mass', 0.5, 1.5)).toBe('0.5 to 1.5 kg');
    expect(formatBand('duration', 60, 7200)).toBe('60 s to 2 h');
  });

  it('exact: durations and clocks', () => {
    expect([0, 5.25, 90, 600, 9000, 172_800, 8e6].map(formatDuration)).toEqual([
      '0 s',
      '5.3 s',
      '90 s',
      '10 min',
      '2 h 30 min',
      '2 d',
      '93 d',
    ]);
    expect([0, 77_400, 86_400, 95_400].map(formatClock)).toEqual(['0:00', '21:30', '24:00', '2:30 on day 2']);
  });

  it('property: what is shown can be read back, to the digits shown', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kindNames.filter((kind) => kind !== 'duration' && kind !== 'temperature')),
        fc.double({ min: 1e-6, max: 1e9, noNaN: true }),
        fc.constantFrom('metric' as const, 'imperial' as const),
        (kind, value, system) => {
          const text = formatQuantity(kind, value, system);
          const read = parseQuantity(kind, text);
          expect(read, text).not.toHaveProperty('mend');
          const shown = /^[\d.]+/.exec(text)![0];
          const lastDigit = 10 ** -(shown.split('.')[1] ?? '').length / Number(shown);
          expect(Math.abs(1 - value / (read as Quantity).value)).toBeLessThanOrEqual(Math.max(lastDigit, 0.01) * 0.501);
        },
      ),
    );
  });

  it('property: temperatures come back within a twentieth of a degree', () => {
    fc.assert(
      fc.property(fc.double({ min: 200, max: 380, noNaN: true }), (value) => {
        for (const system of ['metric', 'imperial'] as const) {
          const read = parseQuantity('temperature', formatQuantity('temperature', value, system)) as Quantity;
          expect(Math.abs(read.value - value)).toBeLessThan(0.51);
        }
      }),
    );
  });
});
