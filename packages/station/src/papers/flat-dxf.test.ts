// What a cutter gets, read by another program: sound, closed, in millimetres, and where the model says.

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type FlatFile, makePaper, papers, readCabinet } from '@stillair/engine';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { flatDxf } from './flat-dxf.ts';

const scratch = mkdtempSync(join(tmpdir(), 'stillair-dxf-'));
afterAll(() => rmSync(scratch, { recursive: true }));

/** A machine that builds must have it; elsewhere what needs it is left out. */
const canRead = existsSync('/usr/lib/python3/dist-packages/ezdxf') || process.env['CI'] !== undefined;

const text = `stillair: 1
cabinet: { inside: 600 mm x 500 mm x 900 mm, made-of: plywood 18 mm, door: { made-of: plywood 18 mm, hinge: right } }
bays: { low: { z: 0 mm to 400 mm }, high: { z: 418 mm to 900 mm } }
shelves: { mid: { between: [low, high], joint: housing, holes: { up: { hole: 60 mm round, count: 2 } } } }
joinery: { corners: rebate }
air: { in: { from: room, to: low, hole: 200 mm x 30 mm, at: { face: right, along: 200 mm, z: 100 mm } }, out: { from: high, to: room, hole: 80 mm round } }
days: { usual: {} }
`;

/** Prints what another reader finds in each file: faults, unit, outlines with their areas, circles, all by layer. */
const reader = `
import json, sys, ezdxf
from ezdxf.math import area
found = {}
for path in sys.argv[1:]:
    document = ezdxf.readfile(path)
    audit = document.audit()
    shapes = []
    for entity in document.modelspace():
        layer = entity.dxf.layer
        if entity.dxftype() == 'LWPOLYLINE':
            points = list(entity.vertices())
            shapes.append(['outline' if entity.closed else 'open', layer, abs(area(points)), min(x for x, y in points), min(y for x, y in points)])
        elif entity.dxftype() == 'CIRCLE':
            shapes.append(['circle', layer, entity.dxf.center.x, entity.dxf.center.y, 2 * entity.dxf.radius])
        else:
            shapes.append([entity.dxftype(), layer])
    found[path] = dict(errors=len(audit.errors), fixes=len(audit.fixes), unit=document.header['$INSUNITS'], layers=[layer.dxf.name for layer in document.layers], shapes=shapes)
print(json.dumps(found))
`;

interface Found {
  readonly errors: number;
  readonly fixes: number;
  readonly unit: number;
  readonly layers: readonly string[];
  readonly shapes: readonly (readonly [string, string, ...number[]])[];
}

async function flatsOf(): Promise<readonly FlatFile[]> {
  const answer = readCabinet('cabinet.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints[0]!.what);
  const source = { file: 'cabinet.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
  const paper = papers.find(({ id }) => id === 'boards')!;
  return (await makePaper(paper, { source, version: '0', units: 'metric', angle: 'first', format: 'a4' })).flats;
}

let flats: readonly FlatFile[] = [];
beforeAll(async () => {
  flats = await flatsOf();
});

describe('boards as DXF', () => {
  it('property: the same shapes give the same bytes', () => {
    for (const { shapes } of flats) expect(flatDxf(shapes)).toBe(flatDxf(shapes));
  });

  it.runIf(canRead)(
    'cross: another reader finds no fault, millimetres, and every outline and hole where the model has it',
    () => {
      const paths = flats.map(({ name, shapes }) => {
        const path = join(scratch, `${name}.dxf`);
        writeFileSync(path, flatDxf(shapes));
        return path;
      });
      const { status, stdout, stderr } = spawnSync('/usr/bin/python3', ['-c', reader, ...paths], { encoding: 'utf8' });
      expect(stderr).toBe('');
      expect(status).toBe(0);
      const found = JSON.parse(stdout) as Record<string, Found>;
      let holes = 0;
      for (const [at, { shapes }] of flats.entries()) {
        const { errors, fixes, unit, layers, shapes: read } = found[paths[at]!]!;
        expect({ errors, fixes, unit }).toEqual({ errors: 0, fixes: 0, unit: 4 });
        const expected = shapes.map((shape) => {
          if (shape.kind === 'text') return ['TEXT', shape.layer];
          if (shape.kind === 'circle') return ['circle', shape.layer, ...shape.at, shape.diameter];
          const [xs, ys] = [shape.points.map(([x]) => x), shape.points.map(([, y]) => y)];
          const size = (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
          return ['outline', shape.layer, size, Math.min(...xs), Math.min(...ys)];
        });
        expect(read).toHaveLength(expected.length);
        for (const [index, [kind, layer, ...numbers]] of read.entries()) {
          expect([kind, layer]).toEqual(expected[index]!.slice(0, 2));
          for (const [which, number] of numbers.entries())
            expect(number).toBeCloseTo(Number(expected[index]![which + 2]), 3);
          expect(layers).toContain(layer);
          if (kind === 'circle') holes++;
        }
      }
      expect(holes).toBeGreaterThan(8);
    },
  );

  it('exact: layers say purpose and depth, and a side that is seen mirrored lies as it is seen', () => {
    const right = flats.find(({ name }) => name.includes('right-side'))!;
    const layers = new Set(right.shapes.map(({ layer }) => layer));
    expect(layers).toEqual(new Set(['outline', 'housing_6mm_deep', 'pilot_11mm_deep', 'opening', 'text']));
    // Seen from inside its front edge is at the right: 200 mm behind it is 300 mm from the left of 500 mm.
    const slot = right.shapes.find(({ layer }) => layer === 'opening');
    expect(slot?.kind === 'outline' && slot.points.map(([x]) => x)).toEqual([200, 400, 400, 200]);
  });
});
