import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatComplaint } from '../cabinet/complaint.ts';
import { documentedName, type FileKey, type FileKeys } from './file-key.ts';
import { fileKeys } from './file-keys.ts';
import { type NetworkFile, readNetwork } from './read-network.ts';

const cases = join(import.meta.dirname, '../../cases/network');
const files = readdirSync(cases).filter((name) => name.endsWith('.yaml'));

const room = '{name: room, T: fixed, T_C: 21.0, pressure: fixed, p_ref_Pa: 0}';
const bay = '{name: bay, T: free, T0_C: 21.0, heat_capacity_J_K: 2500.0, pressure: solved}';
const minimal = `duration_s: 60\nzones:\n- ${room}\n- ${bay}\n`;

describe('readNetwork', () => {
  it.each(files)('exact: %s is read without complaint', (name) => {
    read(readFileSync(join(cases, name), 'utf8'));
  });

  it('exact: brings a file into SI, with what it leaves out filled in', () => {
    const { network, analysis, id } = read(
      `${minimal}id: x\npaths:\n- {name: slit, type: crack, from: bay, to: room, z_m: 0.5, c: 1.0e-3, n: 0.65, dp_lin_Pa: 0.01}\n`,
    );
    expect([id, analysis, network.duration, network.density]).toEqual(['x', 'transient', 60, { model: 'ideal-gas' }]);
    expect(network.zones[0]).toEqual({
      name: 'room',
      temperature: { kind: 'fixed', profile: [[0, 294.15]] },
      pressure: { kind: 'fixed', value: 0 },
      zRef: 0,
      volume: 1,
      concentrations: 'fixed',
    });
    expect(network.zones[1]?.temperature).toEqual({ kind: 'free', initial: 294.15, heatCapacity: 2500 });
    expect(network.paths).toEqual([
      {
        name: 'slit',
        type: 'crack',
        from: 'bay',
        to: 'room',
        z: 0.5,
        open: 'always',
        filterEfficiency: {},
        coefficient: 0.001,
        exponent: 0.65,
        linearBelow: 0.01,
      },
    ]);
  });

  it.each([
    'name: w, a: bay, b: room, area_m2: 2, h_a_W_m2K: 8, h_b_W_m2K: 9, layers: [{thickness_m: 0.018, k_W_mK: 0.13, rho_kg_m3: 500, c_J_kgK: 1600, nodes: 3}]',
    'name: w, a: bay, b: room, A_m2: 2, h_a: 8, h_b: 9, layers: [{d_m: 0.018, lambda_W_mK: 0.13, rho: 500, c: 1600, nodes: 3}]',
    'name: w, a: bay, b: room, area: 2, h_a_W_per_m2K: 8, h_b_W_m2_K: 9, layers: {thickness_mm: 18, k: 0.13, density_kg_m3: 500, cp_J_kgK: 1600, nodes: 3}',
  ])('exact: the same wall however its keys are spelled: %s', (wall) => {
    expect(read(`${minimal}T0_C: 20\nwalls:\n- {${wall}}\n`).network.walls).toEqual([
      {
        name: 'w',
        a: 'bay',
        b: 'room',
        area: 2,
        filmA: 8,
        filmB: 9,
        layers: [{ thickness: 0.018, conductivity: 0.13, density: 500, heatCapacity: 1600, nodes: 3 }],
        grid: 'middles',
        initial: 293.15,
      },
    ]);
  });

  it.each([
    'sweep: {path: inlet, key: area_m2, values: [0, 0.001, 0.002]}',
    'sweep: {path: inlet, area_m2: [0, 0.001, 0.002]}',
    'sweep: {path: inlet, values: [0, 0.001, 0.002]}',
    'sweep: {path: inlet, areas_m2: [0, 0.001, 0.002]}',
    'sweep: {parameter: inlet.area_m2, values: [0, 0.001, 0.002]}',
    'sweep: {what: paths.inlet.area_m2, values: [0, 0.001, 0.002]}',
  ])('exact: %s gives three runs, the first without the path', (sweep) => {
    const path = '{name: inlet, type: orifice, from: room, to: bay, Cd: 0.61, area_m2: 0.5}';
    const file = read(`${minimal}paths:\n- ${path}\n${sweep}\n`);
    expect(file.sweep?.what).toBe('inlet.area_m2');
    expect(
      file.sweep?.runs.map(({ value, absentPaths, network }) => [value, absentPaths, network.paths.length]),
    ).toEqual([
      [0, ['inlet'], 0],
      [0.001, [], 1],
      [0.002, [], 1],
    ]);
    expect(file.sweep?.runs[2]?.network.paths[0]).toMatchObject({ area: 0.002 });
  });

  it.each([
    '[{contaminant: pn, zone: bay, rate: 5}, {contaminant: voc, zone: bay, rate: 0.5}]',
    '{pn: {zone: bay, rate: 5}, voc: {zone: bay, rate: 0.5}}',
    '{pn: {bay: 5}, voc: {bay: 0.5}}',
    '{bay: {pn: 5, voc: 0.5}}',
    '{zone: bay, pn: 5, voc: 0.5}',
  ])('exact: a mode emits the same whichever way it is written: %s', (emission) => {
    const machine = `{name: A, modes: {print: {powers: {bay: 7}, emission: ${emission}}}}`;
    const { network } = read(`${minimal}machines:\n- ${machine}\ncontaminants: [{name: pn}, {name: voc}]\n`);
    expect(network.machines[0]?.modes).toEqual([
      {
        name: 'print',
        powers: [{ node: 'bay', watts: 7 }],
        emissions: [
          { contaminant: 'pn', zone: 'bay', rate: 5 },
          { contaminant: 'voc', zone: 'bay', rate: 0.5 },
        ],
      },
      { name: 'idle', powers: [], emissions: [] },
    ]);
  });

  it('exact: one number of deposition holds for every zone', () => {
    const { network } = read(`${minimal}contaminants: [{name: pn, deposition_per_h: 3.6}]\n`);
    expect(network.contaminants[0]?.deposition).toEqual({ room: 0.001, bay: 0.001 });
  });

  it('exact: an area that only the sweep gives may be left out of its path', () => {
    const path = '{name: inlet, type: orifice, from: room, to: bay, Cd: 0.61}';
    const file = read(`${minimal}paths:\n- ${path}\nsweep: {path: inlet, key: area_m2, values: [0.001]}\n`);
    expect(file.network.paths[0]).toMatchObject({ area: 0.001 });
  });

  it('exact: the whole text of a complaint', () => {
    const text = `${minimal}paths:\n- {name: in, type: orifice, from: room, to: bay, Cd: 0.61, aera_m2: 0.5}\n`;
    const complaints = complaintsOf(text);
    expect(formatComplaint(complaints[1]!)).toBe(
      [
        'net.yaml:6:60  error  key-unknown',
        '   6 | - {name: in, type: orifice, from: room, to: bay, Cd: 0.61, aera_m2: 0.5}',
        '     |                                                            ^^^^^^^ a path of type orifice has no key "aera_m2"',
        '  allowed: the keys name, type, from, to, z_m, open, filter_eff, Cd, area_m2, count, dp_lin_Pa',
        '  to mend: did you mean area_m2?',
      ].join('\n'),
    );
  });

  it.each([
    ['duration_s: -1', 'out-of-bounds'],
    ['duration_s: .nan', 'not-a-number'],
    ['duration_s: 1e999', 'not-a-number'],
    ['duration_s: "60"', 'not-a-number'],
    ['duration_s: 60 s', 'not-a-number'],
    ['duration_s: [60]', 'not-a-number'],
    ['duration_s:', 'value-missing'],
    ['analysis: guess', 'not-a-choice'],
    ['analyis: network', 'key-unknown'],
    ['version: 2', 'version-unknown'],
    ['density: {model: constant}', 'key-missing'],
    ['density: {model: constant, value: 0}', 'out-of-bounds'],
    ['density: {model: ideal_gas, value: 1.2}', 'key-out-of-place'],
    ['nodes: [{name: bay, C_J_K: 5, T0_C: 20}]', 'name-twice'],
    ['nodes: [{name: constructor, C_J_K: 5, T0_C: 20}]', 'name-reserved'],
    ['nodes: [{name: n, C_J_K: 5}]', 'key-missing'],
    ['nodes: [{name: n, C_J_K: 0, T0_C: 20}]', 'out-of-bounds'],
    ['nodes: [{name: n, C_J_K: 5, T0_C: -300}]', 'out-of-bounds'],
    ['nodes: {name: n}', 'not-a-list'],
    ['nodes: [n]', 'not-a-map'],
    ['conductances: [{a: bay, b: rom, W_K: 1}]', 'name-unknown'],
    ['conductances: [{a: bay, b: bay, W_K: 1}]', 'ends-alike'],
    ['conductances: [{a: bay, b: room, W_K: -1}]', 'out-of-bounds'],
    ['conductances: [{a: bay, b: room, W_K: 1, G_W_K: 1}]', 'key-twice'],
    ['heat_sources: [{node: bay, W: 5, active: {windows: [[10, 5]]}}]', 'end-before-start'],
    ['heat_sources: [{node: bay, W: 5, active: {windows: [[10]]}}]', 'not-a-pair'],
    ['heat_sources: [{node: bay, W: 5, active: {thermostat: none}}]', 'name-unknown'],
    ['heat_sources: [{node: bay, W: 5, active: {thermostat: t, machine: m}}]', 'not-one-time'],
    ['heat_sources: [{node: bay, W: 5, active: sometimes}]', 'not-a-choice'],
    ['paths: [{name: p, type: hole, from: bay, to: room}]', 'not-a-choice'],
    ['paths: [{name: p, from: bay, to: room}]', 'key-missing'],
    ['paths: [{name: p, type: crack, from: bay, to: room, c: 1e-3, n: 2}]', 'out-of-bounds'],
    ['paths: [{name: p, type: orifice, from: bay, to: room, Cd: 1, area_m2: -1}]', 'out-of-bounds'],
    ['paths: [{name: p, type: orifice, from: bay, to: room, Cd: 1, area_m2: 1, dp_lin_Pa: 0}]', 'out-of-bounds'],
    ['paths: [{name: p, type: fan_path, from: bay, to: room, fan: {curve: {points: [[1, 2]]}}}]', 'list-short'],
    [
      'paths: [{name: p, type: fan_path, from: bay, to: room, fan: {curve: {points: [[1, 2], [0, 3]]}}}]',
      'flows-not-rising',
    ],
    ['paths: [{name: p, type: fan_path, from: bay, to: room, fan: {curve: {}}}]', 'key-missing'],
    ['paths: [{name: p, type: fan_path, from: bay, to: room, fan: {}}]', 'key-missing'],
    ['paths: [{name: p, type: fixed_flow, from: bay, to: room, kg_s: 1, filter_eff: {dust: 0.5}}]', 'name-unknown'],
    ['contaminants: [{name: c}]\nrecirculation: [{zone: bay, m3_h: 5, eff: {c: 1.5}}]', 'out-of-bounds'],
    ['thermostats: [{name: t, sensor: bay, on_above_C: 30, off_below_C: 30}]', 'hysteresis-none'],
    ['thermostats: [{name: t, sensor: bay, on_below_C: 30, off_above_C: 29}]', 'hysteresis-none'],
    ['thermostats: [{name: t, sensor: bay, on_above_C: 30, off_above_C: 29}]', 'key-out-of-place'],
    ['machines: [{name: m, modes: {print: {bed_set_C: 60}}}]', 'key-out-of-place'],
    ['machines: [{name: m, modes: {print: {powers: [{node: bax, W: 1}]}}}]', 'name-unknown'],
    [
      'machines: [{name: m, modes: {print: }}]\nschedule: [{machine: m, mode: pint, start_s: 0, end_s: 9}]',
      'name-unknown',
    ],
    [
      'machines: [{name: m, modes: {print: }}]\nschedule: [{machine: m, mode: print, start_s: 9, end_s: 0}]',
      'end-before-start',
    ],
    [
      'machines: [{name: m, modes: {print: }}]\nschedule: [{machine: m, mode: print, start_s: 0, end_s: 9}, {machine: m, mode: idle, start_s: 5, end_s: 9}]',
      'schedule-overlaps',
    ],
    ['walls: [{name: w, a: bay, b: room, area_m2: 1, h_a: 8, h_b: 8, layers: [], T0_C: 20}]', 'list-empty'],
    ['exchanges: [{a: bay, b: room}]', 'key-missing'],
    ['exchanges: [{a: bay, b: room, law: plume, coefficient: 1, sources: [x]}]', 'name-unknown'],
    ['sweep: {path: none, key: area_m2, values: [1]}', 'name-unknown'],
    ['sweep: {zone: bay, key: area_m3, values: [1]}', 'key-unknown'],
    ['sweep: {zone: bay, key: heat_capacity_J_K, values: []}', 'list-empty'],
  ])('exact: %s is complained of as %s', (line, code) => {
    const key = line.split(':')[0]!;
    const text = line.startsWith('duration') ? minimal.replace('duration_s: 60', line) : `${minimal}${line}\n`;
    const found = complaintsOf(text);
    expect(found.map((complaint) => complaint.code)).toContain(code);
    expect(found.every(({ where }) => where.lineText.includes(':') || where.lineText.includes(key))).toBe(true);
  });

  it('exact: all faults are told at once, in the order of the file, each once', () => {
    const found = complaintsOf(
      `${minimal}conductances:\n- {a: bay, b: rom, W_K: -1}\nnodes:\n- {name: bay, C_J_K: 1, T0_C: x}\nhumour: dry\n`,
    );
    expect(found.map(({ code, where }) => [code, where.line, where.column])).toEqual([
      ['name-unknown', 6, 15],
      ['out-of-bounds', 6, 25],
      ['name-twice', 8, 10],
      ['not-a-number', 8, 31],
      ['key-unknown', 9, 1],
    ]);
  });

  it.each([
    ['known', (i: number) => `n${i}`],
    ['unknown', (i: number) => `m${i}`],
  ])('limit: ten thousand nodes linked to %s names are read or complained of in one pass', (_, other) => {
    const rows = Array.from({ length: 10_000 }, (_row, i) => `- {name: n${i}, C_J_K: 1, T0_C: 20}`);
    const links = rows.map((_row, i) => `- {a: n${i}, b: ${other((i + 1) % rows.length)}, W_K: 1}`);
    const jobs = rows.map((_row, i) => `- {machine: A, mode: idle, start_s: ${i}, end_s: ${i + 1}}`);
    const text = `${minimal}nodes:\n${rows.join('\n')}\nconductances:\n${links.join('\n')}\nmachines: [{name: A}]\nschedule:\n${jobs.join('\n')}\n`;
    const complaints = complaintsOf(text);
    expect(complaints.length > 0).toBe(other(1) === 'm1');
    expect(complaints.length).toBeLessThan(300);
  });

  it('property: whatever a case file is broken into, reading gives a network or complaints and never throws', () => {
    const texts = files.map((name) => readFileSync(join(cases, name), 'utf8'));
    const piece = fc.oneof(
      fc.string({ maxLength: 4 }),
      fc.constantFrom('[', '{', '}', ']', ':', '- ', '-1', '.nan', '*a', '~', '"', '\t'),
    );
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.nat(), fc.nat(12), piece, (text, at, cut, insert) => {
        const from = at % text.length;
        const result = readNetwork('net.yaml', text.slice(0, from) + insert + text.slice(from + cut));
        if ('complaints' in result) {
          expect(result.complaints.length).toBeGreaterThan(0);
          for (const { where } of result.complaints) expect(where.line).toBeGreaterThan(0);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('exact: every key of a network file stands in its documentation', () => {
    const manual = readFileSync(join(import.meta.dirname, '../../../../docs/network-file.md'), 'utf8');
    const keys = Object.values<FileKeys>(fileKeys).flatMap((ofMap) =>
      Object.values<FileKey>(ofMap).map(documentedName),
    );
    expect(keys.filter((key) => !manual.includes(`\`${key}\``))).toEqual([]);
  });
});

function read(text: string): NetworkFile {
  const file = readNetwork('net.yaml', text);
  if ('complaints' in file) throw new Error(file.complaints.map(formatComplaint).join('\n'));
  return file;
}

function complaintsOf(text: string) {
  const file = readNetwork('net.yaml', text);
  return 'complaints' in file ? file.complaints : [];
}
