import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Cabinet, Edit } from './cabinet.ts';
import { formatComplaint } from './complaint.ts';
import { originAt } from './ledger.ts';
import type { Origins } from './origin.ts';
import { readCabinet } from './read-cabinet.ts';

const cases = join(import.meta.dirname, '../../cases/cabinet');
const text = (name: string): string => readFileSync(join(cases, name), 'utf8');

describe('a first file', () => {
  const first = text('first.yaml');
  const { cabinet, origins } = read(first);

  it('exact: it has 25 lines at most', () => {
    expect(first.trim().split('\n').length).toBeLessThanOrEqual(25);
  });

  it('exact: what it says is in SI', () => {
    expect(cabinet.inside).toEqual({ width: 0.8, depth: 0.6, height: 1.75 });
    expect(cabinet.room.temperature).toEqual([[0, 294.15]]);
    expect(cabinet.bays['upper']).toMatchObject({ z: [0.87, 1.75], x: [0, 0.8] });
    expect(cabinet.doors['door']).toMatchObject({ face: 'front', bays: ['lower', 'upper'] });
    expect(cabinet.doors['door']!.build.layers[0]).toMatchObject({
      material: 'glass',
      thickness: 0.004,
      conductivity: 1,
    });
    expect(cabinet.days['usual']!.jobs['bracket']).toMatchObject({
      start: 32_400,
      duration: 21_600,
      material: 'ABS',
      nozzle: 518.15,
    });
    expect(cabinet.paths['intake']!.parts).toMatchObject([
      { part: 'hole', section: { shape: 'round', diameter: 0.08 } },
    ]);
    expect(cabinet.paths['exhaust']!.parts.map(({ part }) => part)).toEqual(['filter', 'fan']);
  });

  it('exact: what it does not say is assumed by the rules of the docs', () => {
    expect(cabinet.room).toMatchObject({ humidity: 0.5, airChangesPerHour: 0.5, held: false, airCleaner: 0 });
    const area = 2 * (4 * 3.5 + 4 * 2.5 + 3.5 * 2.5);
    expect(cabinet.room.heatLoss).toBeCloseTo(0.7 * area, 9);
    expect(cabinet.room.heatCapacity).toBeCloseTo(24_000 * 14, 6);
    expect(cabinet.faces.bottom.against).toBe('floor');
    expect(cabinet.faces.back).toMatchObject({ against: 'room', gap: 0 });
    expect([cabinet.bays['lower']!.airZones, cabinet.bays['upper']!.airZones]).toEqual([2, 1]);
    expect(cabinet.partitions).toMatchObject([{ id: 'lower-upper', bays: ['lower', 'upper'] }]);
    expect(cabinet.paths['intake']!.place.z).toBeLessThan(cabinet.paths['exhaust']!.place.z);
    expect(cabinet.machines['left']!.at).toEqual([0.4, 0.3]);
    expect(cabinet.people['desk']!.at).toEqual([0.4, -1.5, 1.2]);
  });

  it('exact: origins say given, with the place in the file; catalogue; derived; assumed, with a spread', () => {
    expect(placeOf(origins, 'room.temperature.0.1')).toBe('3: 21 °C');
    expect(placeOf(origins, 'doors.door.build.layers.0.thickness')).toBe('4: glass 4 mm');
    expect(placeOf(origins, 'days.usual.jobs.bracket.duration')).toBe('12: 6 h');
    expect(origins.get('machines.left.hotEnd')).toMatchObject({
      kind: 'catalogue',
      part: 'machines.moving bed 220',
      spread: { p10: 10, p90: 25 },
    });
    expect(origins.get('room.heatLoss')).toMatchObject({ kind: 'derived' });
    expect(origins.get('room.airChangesPerHour')).toMatchObject({
      kind: 'assumed',
      spread: { p10: 0.2, p50: 0.5, p90: 1.5, shape: 'log-normal' },
    });
  });

  it('property: every number has an origin', () => expect(withoutOrigin(cabinet, origins)).toEqual([]));
});

describe('a file with every key', () => {
  const everything = text('everything.yaml');
  const { cabinet, origins } = read(everything);

  it('property: every number has an origin and is finite', () => {
    expect(withoutOrigin(cabinet, origins)).toEqual([]);
    for (const [path, value] of numbersOf(cabinet)) expect(Number.isFinite(value), path).toBe(true);
  });

  it('exact: courses, spreads, shelves, controls and overrides are read', () => {
    expect(cabinet.room.temperature).toEqual([
      [0, 292.15],
      [28_800, 295.15],
      [86_400, 292.15],
    ]);
    expect(origins.get('room.humidity')?.spread).toEqual({ p10: 0.4, p50: 0.45, p90: 0.5, shape: 'normal' });
    expect(cabinet.partitions.map(({ id }) => id)).toEqual(['shelf', 'lower-side', 'upper-side']);
    expect(cabinet.paths['shelf-cables']).toMatchObject({
      from: 'lower',
      to: 'upper',
      place: { face: 'bottom', along: 0.6, z: 0.86 },
    });
    expect(cabinet.paths['exhaust']!.parts.map(({ part }) => part)).toEqual([
      'loss',
      'filter',
      'carbon',
      'fan',
      'duct',
      'loss',
      'loss',
      'loss',
      'loss',
      'flap',
      'loss',
    ]);
    expect(cabinet.paths['side-vent']!.parts.at(-1)).toMatchObject({
      control: { kind: 'proportional', low: 0.4, high: 1 },
    });
    expect(cabinet.paths['clean']!.parts.at(-1)).toMatchObject({
      control: { kind: 'job', machines: ['left'], runOn: 1800 },
    });
    expect(cabinet.paths['chamber-out']!.parts.at(-1)).toMatchObject({
      control: { kind: 'air-quality', on: 300, off: 200 },
    });
    expect(cabinet.heats['light']!.control).toEqual({ kind: 'timer', windows: [[28_800, 79_200]] });
    expect(cabinet.heats['warm']).toMatchObject({ what: 'heater', holds: 318.15, watts: 150 });
    expect(cabinet.factors.leakage).toBe(1.3);
    expect(cabinet.overrides).toMatchObject({
      'faces.left.uValue': 1.1,
      'partitions.0.uValue': 2,
      'bays.lower.leakage': 4e-4,
    });
    expect(cabinet.overrides['machines.left.emission.PM2.5']).toBeCloseTo(0.05, 12);
    expect(cabinet.limits['electronics-air']).toBeCloseTo(315.15, 9);
    expect(cabinet.machines['new']!.chamber).toMatchObject({ leakArea: 15e-4, lamp: 5, recirculation: 0 });
    expect(cabinet.machines['left']).toMatchObject({ hotEnd: 18, electronicsInside: false, supply: { inside: false } });
    expect(cabinet.materials['my nylon']).toMatchObject({ nozzle: 533.15, draughtLimit: 0.25 });
    expect(cabinet.materials['ABS']!.emissions['styrene']!.p50).toBeCloseTo(20 / 60, 12);
    expect(cabinet.materials['ABS']!.emissions['TVOC']!.p50).toBeCloseTo(40 / 60, 12);
    expect(cabinet.days['summer']!.length).toBe(172_800);
  });

  it('exact: still air in a pane has the resistance of ISO 6946', () => {
    const { conductivity, thickness } = cabinet.doors['upper doors']!.build.layers[1]!;
    expect(thickness / conductivity).toBeCloseTo(0.158, 9); // a straight line between 0.15 at 10 mm and 0.17 at 15 mm, heat going sideways
  });

  it('exact: prices of the file go before those of the catalogue', () => {
    expect(cabinet.prices['paths.exhaust.parts.3']).toEqual({ low: 22, high: 26, source: 'the cabinet file' });
    expect(cabinet.prices['paths.exhaust.parts.1']!.source).toMatch(/^invented/);
    // The left face: two boards of plywood and the wool, all over 0.6 m x 1.78 m (the bays without the shelf between).
    expect(cabinet.prices['faces.left']!.low).toBeCloseTo(0.6 * 1.78 * (40 + 5 + 40), 6);
  });

  it('exact: edits as an option has them give the option’s cabinet', () => {
    const { options } = cabinet;
    const quiet = readCabinet('everything.yaml', everything, options['quiet']!.edits);
    if (!quiet.ok) throw new Error(quiet.complaints.map(formatComplaint).join('\n'));
    expect(quiet.cabinet.paths['exhaust']!.parts[3]).toMatchObject({ kind: 'axial 120 mm quiet' });
    expect(quiet.cabinet.paths['intake2']).toMatchObject({ to: 'side' });
    expect(quiet.cabinet.paths['through']).toBeUndefined();
    expect(placeOf(quiet.origins, 'paths.intake2.parts.0.section')).toMatch(/^\d+: air\.intake2$/);
  });
});

describe('overrides', () => {
  const first = text('first.yaml');
  const withOverrides = (...lines: string[]): Cabinet =>
    read(`${first}overrides:\n${lines.map((line) => `  ${line}\n`).join('')}`).cabinet;

  it('exact: each takes the place of what it replaces', () => {
    const cabinet = withOverrides(
      'room.heat-loss: 80 W/K',
      'air.intake.effective-area: 20 cm2',
      'machines.left.heat: 74 W',
      'factors.bed-loss: 1.2',
    );
    expect(cabinet.room.heatLoss).toBe(80);
    const [hole] = cabinet.paths['intake']!.parts;
    expect(hole?.part === 'hole' && hole.dischargeCoefficient * (Math.PI / 4) * 0.08 ** 2).toBeCloseTo(20e-4, 12);
    const { hotEnd, motors, electronics } = cabinet.machines['left']!;
    expect(hotEnd + motors + electronics).toBeCloseTo(74, 9);
    expect(hotEnd / motors).toBeCloseTo(16 / 14, 9);
    expect(cabinet.factors.bedLoss).toBe(1.2);
  });

  it('exact: what a machine gives off is its own, and the material elsewhere stays as it is', () => {
    const cabinet = withOverrides('machines.left.emission.particles: 6e9 /min (3e9 to 1.2e10 /min)');
    expect(cabinet.days['usual']!.jobs['bracket']!.material).toBe('ABS on left');
    expect(cabinet.materials['ABS on left']!.emissions['particles']).toEqual({ p10: 5e7, p50: 1e8, p90: 2e8 });
    expect(cabinet.materials['ABS on left']!.emissions['styrene']).toEqual(
      cabinet.materials['ABS']!.emissions['styrene'],
    );
    expect(cabinet.materials['ABS']!.emissions['particles']!.p50).toBeCloseTo(1e10 / 60, 3);
  });

  it('property: without a given heat loss its factor carries the doubt; with one nothing does', () => {
    const doubt = (lines: string): boolean =>
      read(first + lines).origins.get('factors.roomHeatLoss')?.spread !== undefined;
    expect(doubt('')).toBe(true);
    expect(doubt('overrides: { room.heat-loss: 80 W/K }\n')).toBe(false);
  });
});

describe('edits from outside', () => {
  const first = text('first.yaml');

  it('exact: a fault that an edit causes points at the edit', () => {
    const answer = readCabinet('first.yaml', first, [{ set: { 'air.intake.hole': '80 kg round' } }]);
    expect(answer).toMatchObject({
      ok: false,
      complaints: [{ code: 'unit-wrong', where: { file: 'edit', line: 1, lineText: 'set: air.intake.hole' } }],
    });
  });

  it('exact: an edit that cannot be done is a complaint', () => {
    const answer = readCabinet('first.yaml', first, [{ remove: ['air.outlet'] }]);
    expect(answer).toMatchObject({ ok: false, complaints: [{ code: 'path-astray' }] });
  });

  it('property: however often a text is read with edits, without them it stays what it was', () => {
    const before = JSON.stringify(readCabinet('first.yaml', first));
    const edits: readonly (readonly Edit[])[] = [
      [{ set: { 'air.intake.hole': '120 mm round' } }],
      [{ set: { 'air.exhaust.parts.1.speed': '50 %', 'room.humidity': '40 %' } }],
      [{ remove: ['air.exhaust.parts.0'] }, { add: { 'air.exhaust.parts.0': { guard: 'wire guard' } } }],
      [{ set: { 'bays.upper.z': '900 mm to 1750 mm' } }, { remove: ['cabinet.door'] }],
      [{ set: { 'room.temperature': 'warm' } }],
    ];
    const answers = edits.map((list) => JSON.stringify(readCabinet('first.yaml', first, list)));
    expect(new Set([before, ...answers]).size).toBe(edits.length + 1);
    expect(edits.map((list) => JSON.stringify(readCabinet('first.yaml', first, list)))).toEqual(answers);
    expect(JSON.stringify(readCabinet('first.yaml', first))).toBe(before);
  });

  it('exact: a machine set beside the file is read like one in it', () => {
    const answer = readCabinet('first.yaml', first, [
      { add: { 'machines.right': { kind: 'delta 200', bay: 'upper' } } },
    ]);
    expect(answer.ok && Object.keys(answer.cabinet.machines)).toEqual(['left', 'right']);
  });
});

function read(file: string): { cabinet: Cabinet; origins: Origins } {
  const answer = readCabinet('file.yaml', file);
  if (!answer.ok) throw new Error(answer.complaints.map(formatComplaint).join('\n\n'));
  return answer;
}

/** `line: the characters that the origin points at` */
function placeOf(origins: Origins, path: string): string {
  const origin = origins.get(path);
  if (origin?.kind !== 'given') return `${path} is not given`;
  const { line, column, length, lineText } = origin.where;
  return `${line}: ${lineText.slice(column - 1, column - 1 + length)}`;
}

function numbersOf(value: unknown, path = ''): (readonly [string, number])[] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, path === '' ? key : `${path}.${key}`));
}

function withoutOrigin(cabinet: Cabinet, origins: Origins): string[] {
  const { options: _, prices: __, ...physics } = cabinet;
  return numbersOf(physics)
    .map(([path]) => path)
    .filter((path) => originAt(origins, path) === undefined);
}
