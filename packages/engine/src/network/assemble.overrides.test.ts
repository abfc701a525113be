import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type AssumedInput, assumedInputs } from '../cabinet/assumed-inputs.ts';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { findOverride, overrideRegistry } from '../cabinet/overrides.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInput } from '../cabinet/set-input.ts';
import { assemble } from './assemble.ts';
import type { Assembly } from './assembly.ts';
import { networkDifferences } from './network-difference.ts';

const file = 'reference-cabinet-two-zones.yaml';
const text = readFileSync(new URL(`../../cases/assemble/${file}`, import.meta.url), 'utf8');

function read(path?: string, value?: string): { cabinet: Cabinet; inputs: readonly AssumedInput[] } {
  const lines = text.split('\n').filter((line) => path === undefined || !line.startsWith(`  ${path}:`));
  if (path !== undefined) lines.splice(lines.indexOf('overrides:') + 1, 0, `  ${path}: ${value}`);
  const answer = readCabinet(file, lines.join('\n'));
  if (!answer.ok) throw new Error(JSON.stringify(answer.complaints));
  const known = new Set(path === undefined ? [] : read().inputs.map((input) => input.path));
  return { cabinet: answer.cabinet, inputs: assumedInputs(answer.origins).filter((input) => !known.has(input.path)) };
}

function assembled(path?: string, value?: string): Assembly {
  return assemble(read(path, value).cabinet, 'usual');
}

/** A value of each kind that the reference cabinet does not have. */
const values: Readonly<Record<string, string>> = {
  'u-value': '1.3 W/(m2 K)',
  'heat-loss': '85 W/K',
  area: '6 cm2',
  power: '55 W',
  number: '1.37',
  'particle-rate': '3e9 /min',
  'vapour-rate': '7 µg/min',
};
/** What stands for the star. */
const ids: Readonly<Record<string, string>> = {
  faces: 'left',
  doors: 'door',
  shelves: 'shelf',
  bays: 'upper',
  machines: 'right',
  air: 'intake',
};

describe('overrides in the network', () => {
  it.each(overrideRegistry.map(({ path, kind }) => [path, kind] as const))('property: %s changes it', (path, kind) => {
    const at = path.replace('*', ids[path.split('.')[0]!]!);
    const other = assembled(at, values[kind]!);
    expect(networkDifferences(assembled().network, other.network, 1e-9)).not.toEqual([]);
    // And it is told that it did, under the path that the registry gives.
    const { override, ids: stars } = findOverride(at.split('.'))!;
    const names = override.path.startsWith('shelves.') ? ['0'] : [...stars];
    expect(other.overridesUsed).toContain(override.cabinet.replaceAll('*', () => names.shift()!));
  });

  it('exact: a U-value scales resistances between two films of 0.13 m²K/W and keeps the heat capacity', () => {
    const wall = assembled('faces.left.u-value', '1.3 W/(m2 K)').network.walls.find(
      ({ name }) => name === 'upper.left.low',
    )!;
    const resistance = wall.layers.reduce((sum, { thickness, conductivity }) => sum + thickness / conductivity, 0);
    expect(1 / (0.26 + resistance)).toBeCloseTo(1.3, 12);
    expect(wall.layers).toMatchObject([{ thickness: 0.018, density: 500, heatCapacity: 1600 }]);
  });

  it('limit: the U-value that the layers have anyway changes nothing', () => {
    // 1/(0.13 + 0.018/0.13 + 0.13)
    const own = String(1 / (0.26 + 0.018 / 0.13));
    for (const path of ['faces.left.u-value', 'shelves.shelf.u-value'])
      expect(networkDifferences(assembled().network, assembled(path, `${own} W/(m2 K)`).network, 1e-12)).toEqual([]);
  });

  it('exact: a measured leakage area passes what ASHRAE says it does, and stands for all gaps of its bay only', () => {
    const { network, leaks } = assembled('bays.upper.leakage', '6 cm2');
    const ofUpper = network.paths.filter(({ name }) => name.startsWith('leak of upper'));
    // At 4 Pa a leakage area passes A sqrt(2 Δp/ρ) by its definition.
    const atFour = ofUpper.reduce(
      (sum, path) => (path.type === 'crack' ? sum + path.coefficient * 4 ** path.exponent : 0),
      0,
    );
    expect(atFour).toBeCloseTo(6e-4 * Math.sqrt(8 / 1.2), 12);
    expect(leaks.filter(({ bay }) => bay === 'upper')).toHaveLength(4);
    expect(leaks.filter(({ bay }) => bay === 'lower').length).toBe(
      assembled().leaks.filter(({ bay }) => bay === 'lower').length,
    );
  });
});

describe('spreads of overrides', () => {
  const spread: Readonly<Record<string, string>> = {
    'u-value': '1.3 (1 to 2) W/(m2 K)',
    'heat-loss': '85 W/K (60 to 110 W/K)',
    area: '6 cm2 (3 to 9 cm2)',
    power: '55 W (40 to 70 W)',
    number: '1.37 (1.2 to 1.5)',
    'particle-rate': '3e9 /min (1e9 /min to 6e9 /min)',
    'vapour-rate': '7 µg/min (3 to 12 µg/min)',
  };

  it.each(overrideRegistry.map(({ path, kind }) => [path, kind] as const))(
    'property: each end of the spread of %s moves the network, and no input of it is without effect',
    (path, kind) => {
      const at = path.replace('*', ids[path.split('.')[0]!]!);
      const found = read(at, spread[kind]!);
      const { cabinet } = found;
      // What a material of the machine's own would give off as heat in a fire is no matter of its days.
      const inputs = found.inputs.filter(({ path: input }) => !input.startsWith('protection.'));
      expect(inputs.length).toBeGreaterThan(0);
      const base = assemble(cabinet, 'usual').network;
      for (const { path: input, spread: ends } of inputs)
        for (const end of [ends.p10, ends.p90])
          expect(
            networkDifferences(base, assemble(setInput(cabinet, input, end), 'usual').network, 1e-9),
            input,
          ).not.toEqual([]);
    },
  );
});
