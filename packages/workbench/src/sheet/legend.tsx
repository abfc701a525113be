// What the colour of the air means, in the person's unit.

import { formatQuantity, type UnitSystem } from '@stillair/engine';
import { COOL, WARM, washOf } from './wash.ts';

const STEPS = 5;

export function Legend({ dark, units }: { readonly dark: boolean; readonly units: UnitSystem }) {
  const temperatures = Array.from({ length: STEPS + 1 }, (_, at) => COOL + (at / STEPS) * (WARM - COOL));
  return (
    <svg className="legend" viewBox="0 0 300 30" role="img" aria-label="colour of the air by its temperature">
      {temperatures.map((kelvin, at) => (
        <g key={kelvin}>
          <rect x={at * 50} y="0" width="50" height="12" fill={washOf(kelvin, dark)} />
          <text x={at * 50 + 25} y="26" textAnchor="middle">
            {formatQuantity('temperature', kelvin, units)}
          </text>
        </g>
      ))}
    </svg>
  );
}
