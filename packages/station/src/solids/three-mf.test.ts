import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Shape } from '@stillair/engine';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { openBuilder } from './build-mesh.ts';
import { type Mesh, meshVolume, openEdges, triangleCount } from './mesh.ts';
import { binaryStl } from './stl.ts';
import { threeMf } from './three-mf.ts';

/** A cube of 10 mm with a square hole of 4 mm. */
const square = (half: number) =>
  [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ] as const;
const pierced: Shape = {
  kind: 'cut',
  from: { kind: 'prism', outline: square(5), from: 0, to: 10 },
  by: [{ kind: 'prism', outline: square(2), from: 0, to: 10 }],
};

const build = await openBuilder();
const mesh = build(pierced);

describe('3MF', () => {
  const bytes = threeMf('A "lid" & <tray>', [{ name: 'tray <1> & 2', mesh, count: 3 }]);
  const files = unzipSync(bytes);
  const text = (name: string): string => strFromU8(files[name]!);

  it('exact: the package holds its content types, its relationship and one model, by the names of the specification', () => {
    expect(Object.keys(files)).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
    expect(text('_rels/.rels')).toContain('Target="/3D/3dmodel.model"');
    expect(text('3D/3dmodel.model')).toContain('unit="millimeter"');
  });

  it('exact: read back, the model is the same solid', () => {
    const model = text('3D/3dmodel.model');
    const vertices = [...model.matchAll(/<vertex x="(.+?)" y="(.+?)" z="(.+?)"\/>/g)].flatMap(([, ...xyz]) =>
      xyz.map(Number),
    );
    const triangles = [...model.matchAll(/<triangle v1="(\d+)" v2="(\d+)" v3="(\d+)"\/>/g)].flatMap(([, ...at]) =>
      at.map(Number),
    );
    const back: Mesh = { vertices: Float64Array.from(vertices), triangles: Uint32Array.from(triangles) };
    expect(openEdges(back)).toBe(0);
    expect(meshVolume(back)).toBeCloseTo(1000 - 160, 6);
  });

  it('exact: the same parts give the same bytes', () => {
    expect(threeMf('A "lid" & <tray>', [{ name: 'tray <1> & 2', mesh, count: 3 }])).toEqual(bytes);
  });

  // A second reader of zip and XML, strict, and the rules of the core specification about what is in the model.
  it.skipIf(!existsSync('/usr/bin/python3'))(
    'cross: another reader opens it and finds every rule of the model kept',
    () => {
      const folder = mkdtempSync(join(tmpdir(), 'stillair-3mf-'));
      try {
        const file = join(folder, 'tray.3mf');
        writeFileSync(file, bytes);
        const { stdout, stderr, status } = spawnSync('/usr/bin/python3', ['-c', READER, file], { encoding: 'utf8' });
        expect(stderr).toBe('');
        expect(status).toBe(0);
        expect(stdout.trim()).toBe('tray <1> & 2, 3 times 16 32');
      } finally {
        rmSync(folder, { recursive: true });
      }
    },
  );
});

describe('STL', () => {
  it('exact: 84 bytes and 50 for each triangle; every edge is met once each way by its coordinates alone', () => {
    const bytes = binaryStl('tray', mesh);
    expect(bytes.length).toBe(84 + 50 * triangleCount(mesh));
    const view = new DataView(bytes.buffer);
    expect(view.getUint32(80, true)).toBe(triangleCount(mesh));
    const numbers = new Map<string, number>();
    const places: number[] = [];
    const triangles = Array.from({ length: 3 * triangleCount(mesh) }, (_, at) => {
      const start = 84 + 50 * Math.floor(at / 3) + 12 + 12 * (at % 3);
      const place = [0, 4, 8].map((step) => view.getFloat32(start + step, true));
      const key = place.join(' ');
      if (!numbers.has(key)) {
        numbers.set(key, numbers.size);
        places.push(...place);
      }
      return numbers.get(key)!;
    });
    const back: Mesh = { vertices: Float64Array.from(places), triangles: Uint32Array.from(triangles) };
    expect(openEdges(back)).toBe(0);
    expect(meshVolume(back)).toBeCloseTo(840, 3);
  });
});

const READER = `
import sys, zipfile, xml.etree.ElementTree as tree
CORE = '{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}'
package = zipfile.ZipFile(sys.argv[1])
assert package.testzip() is None
types = tree.fromstring(package.read('[Content_Types].xml'))
assert {each.get('Extension') for each in types} == {'rels', 'model'}
(relation,) = tree.fromstring(package.read('_rels/.rels'))
model = tree.fromstring(package.read(relation.get('Target').lstrip('/')))
assert model.tag == CORE + 'model' and model.get('unit') == 'millimeter'
assert [each.tag for each in model] == [CORE + name for name in ('metadata', 'resources', 'build')]
ids = set()
for thing in model.find(CORE + 'resources'):
    assert thing.tag == CORE + 'object' and thing.get('type') == 'model'
    assert thing.get('id') not in ids and int(thing.get('id')) > 0
    ids.add(thing.get('id'))
    (mesh,) = thing
    vertices, triangles = mesh
    count = len(vertices)
    assert count >= 3 and len(triangles) >= 4
    for vertex in vertices:
        assert set(vertex.attrib) == {'x', 'y', 'z'} and all(abs(float(value)) < 1e4 for value in vertex.attrib.values())
    edges = set()
    for triangle in triangles:
        corners = [int(triangle.get(name)) for name in ('v1', 'v2', 'v3')]
        assert len(set(corners)) == 3 and all(0 <= corner < count for corner in corners)
        for edge in zip(corners, corners[1:] + corners[:1]):
            assert edge not in edges
            edges.add(edge)
    assert all((b, a) in edges for a, b in edges)
    print(thing.get('name'), count, len(triangles))
assert {item.get('objectid') for item in model.find(CORE + 'build')} == ids
`;
