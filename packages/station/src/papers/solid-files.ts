// Printed parts as files: one 3MF and one STL each.

import type { SolidFile } from '@stillair/engine';
import type { SetFile } from '../io.ts';
import { openBuilder } from '../solids/build-mesh.ts';
import { binaryStl } from '../solids/stl.ts';
import { threeMf } from '../solids/three-mf.ts';

export async function solidFiles(solids: readonly SolidFile[]): Promise<readonly SetFile[]> {
  const build = await openBuilder();
  return solids.flatMap(({ name, shape, count }): SetFile[] => {
    const mesh = build(shape);
    return [
      { name: `printed/${name}.3mf`, content: threeMf(name, [{ name, mesh, count }]) },
      { name: `printed/stl/${name}.stl`, content: binaryStl(name, mesh) },
    ];
  });
}
