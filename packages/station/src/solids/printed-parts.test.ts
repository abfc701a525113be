import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Cabinet,
  type Edit,
  type PrintedPart,
  partsCalledFor,
  printingOf,
  readCabinet,
  type Shape,
} from '@stillair/engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Builder, openBuilder } from './build-mesh.ts';
import { type Mesh, meshBox, meshVolume, openEdges, overhangArea, thinnestWall } from './mesh.ts';

const LEAST_WALL = 0.9; // two lines of 0.45 mm

function read(example: string, edits: readonly Edit[] = []) {
  const path = join(import.meta.dirname, `../../../../examples/${example}.yaml`);
  return readCabinet(`${example}.yaml`, readFileSync(path, 'utf8'), edits);
}

function cabinetOf(example: string, edits: readonly Edit[] = []): Cabinet {
  const answer = read(example, edits);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

/** A sound finding that fails calls for the labyrinth. */
const loud = [{ trade: 'sound', verdict: 'fails' }] as unknown as Parameters<typeof partsCalledFor>[1];

const cabinets = ['tool-library', 'school-locker', 'winter-shed'].map((name) => [name, cabinetOf(name)] as const);
const all: (readonly [string, PrintedPart, Cabinet])[] = cabinets.flatMap(([name, cabinet]) =>
  partsCalledFor(cabinet, loud).parts.map((part) => [`${name}: ${part.id}`, part, cabinet] as const),
);

let build: Builder;
beforeAll(async () => {
  const make = await openBuilder();
  const known = new Map<Shape, Mesh>();
  build = (shape) => {
    const mesh = known.get(shape) ?? make(shape);
    known.set(shape, mesh);
    return mesh;
  };
});

describe('printed parts of the examples', () => {
  it('property: between them they call for every kind of part', () => {
    for (const kind of [
      'grille',
      'seat',
      'clamp',
      'adapter',
      'bend',
      'fan-plate',
      'clip',
      'bracket',
      'arm',
      'corner',
      'labyrinth',
    ])
      expect(
        all.some(([, { id }]) => id.includes(`-${kind}`)),
        kind,
      ).toBe(true);
  });

  it.each(all)('exact: %s is closed, of its volume and size, and no wall is thinner than two lines', (_, part) => {
    const mesh = build(part.shape);
    expect(openEdges(mesh)).toBe(0);
    const volume = meshVolume(mesh);
    expect(volume).toBeGreaterThan(0);
    if (part.volume !== undefined) expect(volume / part.volume).toBeCloseTo(1, 5);
    const { low, high } = meshBox(mesh);
    expect(low[2]).toBe(0);
    for (const axis of [0, 1, 2] as const) expect(high[axis] - low[axis]).toBeCloseTo(part.size[axis], 2);
    expect(part.thinnest).toBeGreaterThanOrEqual(LEAST_WALL);
    expect(thinnestWall(mesh)).toBeGreaterThanOrEqual(part.thinnest - 0.01);
  });

  it('property: what is said to need no support has hardly a face that leans over air', () => {
    for (const [name, part] of all) {
      if (!part.lies.includes('without support')) continue;
      // Small bores that lie across, and ends of a few mm.
      expect(overhangArea(build(part.shape), 45), name).toBeLessThan(130);
    }
  });

  it('property: the loss of each can be taken into the file', () => {
    for (const [name, { id, loss }] of all) {
      if (loss?.edits === undefined || name.startsWith('tool-library: east')) continue;
      const answer = read(name.replace(/:.*/, ''), loss.edits);
      expect(answer.ok ? '' : answer.complaints.map(({ what }) => what).join('; '), id).toBe('');
      expect(loss.factor).toBeGreaterThan(0);
    }
  });
});

describe('pieces of a part that is larger than the bed', () => {
  it('exact: they lie on the bed, and are the whole less the holes of their pins', () => {
    const cabinet = cabinetOf('school-locker');
    const part = partsCalledFor(cabinet).parts.find(({ id }) => id === 'intake-grille')!;
    const { pieces, on } = printingOf(part, cabinet);
    expect(on).toEqual(['cricket']);
    expect(pieces).toHaveLength(2);
    const meshes = pieces.map(({ shape }) => build(shape));
    // Two pins of 3.2 mm (sixteen-sided, sides on the circle), 10 mm into each piece.
    const pins = 2 * 20 * 16 * 1.6 ** 2 * Math.tan(Math.PI / 16);
    const sum = meshes.reduce((total, mesh) => total + meshVolume(mesh), 0);
    expect(sum / (part.volume! - pins)).toBeCloseTo(1, 5);
    for (const mesh of meshes) {
      expect(openEdges(mesh)).toBe(0);
      const { low, high } = meshBox(mesh);
      expect(high[0] - low[0]).toBeCloseTo(part.size[0] / 2, 2);
    }
  });

  it('property: a round bed takes what its circle takes', () => {
    const cabinet = cabinetOf('tool-library');
    const seat = partsCalledFor(cabinet).parts.find(({ id }) => id === 'loft-cleaner-seat-0')!;
    expect(printingOf(seat, cabinet).on).toEqual(['gable', 'ridge', 'purlin']);
  });
});
