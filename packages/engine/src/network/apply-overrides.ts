// What a file puts in place of derived quantities and the cabinet cannot hold as one number of a part: applied anew to each
// run, since a sample may move it within its spread.

import type { Cabinet, CabinetPath, Machine } from '../cabinet/cabinet.ts';
import { measuredHeat } from '../cabinet/measured-heat.ts';
import { sectionArea } from './section-area.ts';

export function applyOverrides(cabinet: Cabinet): { readonly cabinet: Cabinet; readonly used: readonly string[] } {
  const used: string[] = [];
  const replaced = <Part>(
    parts: Readonly<Record<string, Part>>,
    pathOf: (id: string) => string,
    by: (part: Part, value: number) => Part,
  ): Record<string, Part> =>
    Object.fromEntries(
      Object.entries(parts).map(([id, part]) => {
        const path = pathOf(id);
        const value = cabinet.overrides[path];
        if (value === undefined) return [id, part];
        used.push(path);
        return [id, by(part, value)];
      }),
    );
  const machines = replaced<Machine>(cabinet.machines, (id) => `machines.${id}.heat`, measuredHeat);
  const paths = replaced<CabinetPath>(cabinet.paths, (id) => `paths.${id}.effectiveArea`, withEffectiveArea);
  return { cabinet: { ...cabinet, machines, paths }, used };
}

/** The path's first hole gets the discharge coefficient that the area asks for. */
function withEffectiveArea(path: CabinetPath, area: number): CabinetPath {
  const first = path.parts.findIndex(({ part }) => part === 'hole');
  const parts = path.parts.map((part, index) =>
    index === first && part.part === 'hole'
      ? { ...part, dischargeCoefficient: area / (sectionArea(part.section) * part.count) }
      : part,
  );
  return { ...path, parts };
}
