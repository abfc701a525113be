import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatComplaint } from '../cabinet/complaint.ts';
import { type NetworkFile, readNetwork } from './read-network.ts';
import { writeNetwork } from './write-network.ts';

const cases = join(import.meta.dirname, '../../cases/network');
const files = readdirSync(cases).filter((name) => name.endsWith('.yaml'));

/** A network that uses every opt-in law once. */
const everything = `
title: "every law: once"
duration_h: 1.5
density: {model: constant, value: 1.19}
constants: {g: 9.81, cp_J_kgK: 1005}
T0_C: 18.7
breaks_s: [60, 1200]
zones:
- {name: out, T: fixed, T_C: [[0, 21.35], [3600, 24.1]], pressure: fixed, p_ref_Pa: 1.5, conc: fixed}
- {name: low, T: free, heat_capacity_J_K: 900, z_ref_m: 0.2, volume_m3: 0.3, conc: free}
- {name: high, T: free, heat_capacity_J_K: 900, volume_m3: 0.3, conc: free}
- {name: "2", T: fixed, T_C: 20, conc: free, volume_m3: 30}
nodes:
- {name: bed, C_J_K: 900}
- {name: supply, C_J_K: 300, T0_C: 30}
conductances:
- {a: supply, b: low, W_K: 0.7, active: {not: {windows: [[100, 200]]}}}
walls:
- {name: back, a: low, b: out, area_m2: 0.5, grid: faces, layers: [{d_mm: 18, k: 0.13, rho: 500, c: 1600, nodes: 3}]}
- {name: front, a: low, b: out, area_m2: 0.5, h_a: 7, h_b: 0, layers: [{d_mm: 4, k: 1, rho: 2500, c: 750}]}
convections:
- {surface: back.1, air: low, area_m2: 0.5, faces: vertical, length_m: 0.7, factor: 1.1, forced: [{h_W_m2K: 4, active: {thermostat: warm}, fan: inner}]}
- {surface: bed, air: low, area_m2: 0.05, faces: up, length_m: 0.06, heat_to: high}
radiation:
- {a: bed, b: back.1, area_m2: 0.05, emissivity: 0.9}
radiant_stars:
- {name: inside, members: [{node: bed, weight_m2: 0.04}, {node: back.1, weight_m2: 0.4}, {node: front.1, weight_m2: 0.4}]}
heat_sources:
- {node: low, W: 10, active: {any_of: [{machine: E, modes: [print]}, {all_of: [{thermostat: warm}, {machine: E}]}]}, profile: [[0, 1], [60, 0.5]]}
paths:
- {name: door, type: tall_opening, from: low, to: out, z_m: 0.1, Cd: 0.6, width_m: 0.5, height_m: 0.7, open: never}
- {name: slit, type: crack, from: high, to: out, z_m: 1, c: 0.001, n: 0.7, dp_lin_Pa: 0.01}
- {name: push, type: fixed_flow, from: out, to: low, kg_s: 0.001, filter_eff: {dust: 0.9}}
- name: exhaust
  type: fan_path
  from: high
  to: "2"
  fan:
  - {name: inner, curve: {poly: {p0: 30, a: 100, b: 1000}}, speed: {stages: [{when: {thermostat: warm}, speed: 0.5}, {when: always, speed: 0.2}]}}
  - {name: outer, curve: {points: [[0, 30], [0.01, 0]]}, control: {thermostat: dusty}, stopped: {a: 10, K: [{K: 3, area_m2: 0.005}]}, speed: {proportional: {sensor: probe, from_C: 25.3, to_C: 35, low: 0.2, high: 1}}}
  filter: {a: 1000, b: 20000}
  resistance: {a_lin: 20, b_quad: 30, K: [{K: 1.2, area_m2: 0.005}, {name: bend, K: 0.4, area_m2: 0.005}]}
  flap: {opens_at_Pa: 2, leak_area_m2: 0.0001}
exchanges:
- {a: low, b: high, m3_h: 12, active: {windows: [[0, 60]]}}
- {name: shelf, a: low, b: high, law: horizontal_opening, area_m2: 0.01, round: false, path: slit}
- {name: plume, a: low, b: high, law: plume, coefficient: 0.005, sources: [bed]}
- {name: gap, a: low, b: out, law: vertical_opening, Cd: 0.5, width_m: 0.1, height_m: 0.2}
air_change: [{zone: "2", with: out, per_h: 0.7}]
machines:
- name: E
  bed: {node: bed, P_max_W: 220, supply: {node: supply, share: 0.12}}
  modes:
    print: {bed_set_C: 100.1, powers: {low: 5}, emission: {dust: {zone: low, rate: 10, burst: {ratio: 5, time_s: 300}, tail: {share: 0.1, time_s: 900}}}}
schedule: [{machine: E, mode: print, start_s: 60, end_h: 0.75}]
sensors: [{name: probe, at: high, lag_s: 60, offset_K: -0.3}]
thermostats:
- {name: warm, sensor: probe, on_above_C: 32.6, off_below_C: 30, initial: on}
- {name: cold, sensor: bed, on_below_C: 10, off_above_C: 12}
- {name: dusty, sensor: {contaminant: dust, zone: low}, on_above: 50, off_below: 20}
contaminants:
- {name: dust, unit: ug/m3, scale: 10, initial: {low: 3}, deposition_per_h: {low: 0.5}, coagulation_m3_s: 1.0e-15, outside: {out: [[0, 5], [60, 7]]}}
- {name: vapour, unit: ug/m3, scale: 10}
recirculation: [{name: cleaner, zone: high, m3_h: 20, eff: {vapour: 0.4}}]
carbon_beds: [{name: carbon, in: cleaner, at: high, mass_kg: 0.5, vapours: [{contaminant: vapour, eff: 0.4, vapour: styrene, kg_per_unit: 1.0e-9, load_kg_kg: 0.01}]}]
emissions: [{contaminant: vapour, zone: low, rate: 3, active: {machine: E}, tail: {share: 0.2, time_s: 60}}]
`;

describe('writeNetwork', () => {
  it.each(files)('exact: %s reads back to the same network', (name) => {
    const { network, analysis } = read(readFileSync(join(cases, name), 'utf8'));
    const again = read(writeNetwork(network, analysis));
    expect(again.network).toEqual(network);
    expect(again.analysis).toBe(analysis);
  });

  it('exact: a network with every opt-in law reads back to the same network', () => {
    const { network } = read(everything);
    const unused = Object.entries(network).filter(([, list]) => Array.isArray(list) && list.length === 0);
    expect(unused.map(([key]) => key)).toEqual([]);
    expect(read(writeNetwork(network)).network).toEqual(network);
  });

  it('property: every temperature from 150 to 1000 K reads back to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ min: 150, max: 1000, noNaN: true }), (kelvin) => {
        const { network } = read('duration_s: 0\nzones: [{name: a, T: fixed, T_C: 20}]');
        const profile = [[0, kelvin]] as const;
        const warm = {
          ...network,
          zones: [{ ...network.zones[0]!, temperature: { kind: 'fixed' as const, profile } }],
        };
        expect(read(writeNetwork(warm)).network.zones[0]?.temperature).toEqual({ kind: 'fixed', profile });
      }),
    );
  });
});

function read(text: string): NetworkFile {
  const file = readNetwork('net.yaml', text);
  if ('complaints' in file) throw new Error(file.complaints.map(formatComplaint).join('\n'));
  return file;
}
