import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
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
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Builder, openBuilder } from './build-mesh.ts';
import { type Mesh, meshBox, meshVolume, openEdges, overhangArea, thinnestWall } from './mesh.ts';
import { read3mf, readStl, reads3mf, readsSchema, readsStl, schemaFaults } from './outside-readers.ts';
import { binaryStl } from './stl.ts';
import { threeMf } from './three-mf.ts';

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

/** One file for each piece of each part, with what it must be: of a part in one piece, its closed form. */
interface Filed {
  readonly title: string;
  readonly path: string;
  readonly mesh: Mesh;
  readonly volume: number;
  readonly size: readonly number[];
}

const folder = mkdtempSync(join(tmpdir(), 'stillair-parts-'));
afterAll(() => rmSync(folder, { recursive: true }));
/** Single precision of what a reader keeps, mm. */
const SINGLE = 1e-3;

function filed(): readonly Filed[] {
  return all.flatMap(([, part, cabinet], at) =>
    printingOf(part, cabinet).pieces.map(({ id, shape }, piece, { length }): Filed => {
      const mesh = build(shape);
      const { low, high } = meshBox(mesh);
      return {
        title: `${id} & <${piece}>`,
        path: join(folder, `${at}-${piece}`),
        mesh,
        volume: length === 1 ? (part.volume ?? meshVolume(mesh)) : meshVolume(mesh),
        size: length === 1 ? part.size : [0, 1, 2].map((axis) => high[axis]! - low[axis]!),
      };
    }),
  );
}

describe('files of printed parts, read by programs of others', () => {
  it.skipIf(!reads3mf)(
    "cross: the 3MF consortium's library, strict, opens every part without a warning: one closed solid each, of the model's volume and box",
    () => {
      const parts = filed();
      for (const { title, path, mesh } of parts) {
        writeFileSync(`${path}.3mf`, threeMf(title, [{ name: title, mesh, count: 1 }]));
      }
      const read = read3mf(parts.map(({ path }) => `${path}.3mf`));
      expect(read).toHaveLength(parts.length);
      expect(parts.length).toBeGreaterThan(30);
      for (const [at, { fault, warnings, unit, items, meshes }] of read.entries()) {
        const { title, volume, size } = parts[at]!;
        expect({ fault, warnings, unit, items }, title).toEqual({ fault: 0, warnings: [], unit: 1, items: 1 });
        const [one] = meshes;
        expect(meshes).toHaveLength(1);
        expect(one).toMatchObject({ name: title, closed: true });
        expect(one!.volume / volume, title).toBeCloseTo(1, 4);
        for (const axis of [0, 1, 2])
          expect(Math.abs(one!.high[axis]! - one!.low[axis]! - size[axis]!), title).toBeLessThan(0.01);
      }
    },
    30_000,
  );

  it.skipIf(!readsSchema)('cross: every model part is valid by the schema of the core specification', () => {
    const paths = filed().map(({ title, path, mesh }) => {
      const model = unzipSync(threeMf(title, [{ name: title, mesh, count: 2 }]))['3D/3dmodel.model']!;
      writeFileSync(`${path}.model`, model);
      return `${path}.model`;
    });
    expect(schemaFaults(paths)).toBe('');
  });

  it.skipIf(!readsStl)(
    'cross: a mender of STL finds every part closed, has nothing to mend, and measures its volume and box',
    () => {
      for (const { title, path, mesh, volume } of filed()) {
        writeFileSync(`${path}.stl`, binaryStl(title, mesh));
        const read = readStl(`${path}.stl`);
        expect({ unconnected: read.unconnected, mended: read.mended }, title).toEqual({ unconnected: 0, mended: 0 });
        expect(read.volume / volume, title).toBeCloseTo(1, 3);
        const { low, high } = meshBox(mesh);
        for (const axis of [0, 1, 2]) {
          expect(Math.abs(read.low[axis]! - low[axis]!), title).toBeLessThan(SINGLE);
          expect(Math.abs(read.high[axis]! - high[axis]!), title).toBeLessThan(SINGLE);
        }
      }
    },
  );
});

describe('what the programs of others refuse', () => {
  const cube: Shape = {
    kind: 'prism',
    outline: [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ],
    from: 0,
    to: 10,
  };
  const file = (name: string, mesh: Mesh): string => {
    const path = join(folder, `${name}.3mf`);
    writeFileSync(path, threeMf(name, [{ name, mesh, count: 1 }]));
    return path;
  };

  it.skipIf(!reads3mf)('limit: a face that is inside out, one that is missing, and a corner that there is not', () => {
    const mesh = build(cube);
    const [a, b, c, ...rest] = mesh.triangles;
    const turned = { ...mesh, triangles: Uint32Array.from([b!, a!, c!, ...rest]) };
    const open = { ...mesh, triangles: Uint32Array.from(rest) };
    const beyond = { ...mesh, triangles: Uint32Array.from([99, b!, c!, ...rest]) };
    const read = read3mf([file('whole', mesh), file('turned', turned), file('open', open), file('beyond', beyond)]);
    expect(read.map(({ fault, meshes }) => (fault === 0 ? meshes[0]!.closed : 'refused'))).toEqual([
      true,
      false,
      false,
      'refused',
    ]);
  });

  it.skipIf(!readsSchema)('limit: a unit, a number, an order and an element that the schema does not know', () => {
    const model = strFromU8(
      unzipSync(threeMf('cube', [{ name: 'cube', mesh: build(cube), count: 1 }]))['3D/3dmodel.model']!,
    );
    const faults = (from: string | RegExp, to: string): string => {
      const changed = model.replace(from, to);
      expect(changed).not.toBe(model);
      const path = join(folder, 'changed.model');
      writeFileSync(path, changed);
      return schemaFaults([path]);
    };
    expect(faults('unit="millimeter"', 'unit="millimetre"')).toContain('unit');
    expect(faults(/ x="0"/, ' x="0,5"')).toContain("attribute 'x'");
    expect(faults(/(<resources>[\s\S]*<\/resources>)(<build>.*<\/build>)/, '$2$1')).toContain('build');
    expect(faults('<build>', '<build><thing/>')).toContain('thing');
    expect(faults(/ v3="\d+"/, '')).toContain("'v3' is required");
  });

  it.skipIf(!readsStl)('limit: a mender of STL tells a face that is missing', () => {
    const mesh = build(cube);
    const path = join(folder, 'open.stl');
    writeFileSync(path, binaryStl('open', { ...mesh, triangles: mesh.triangles.slice(3) }));
    expect(readStl(path).unconnected).toBeGreaterThan(0);
  });
});
