// How the carcass is put together, with what is usual where the file says nothing; and whether what it says can be meant.

import { isFault } from '../units/quantity.ts';
import { findPart, kindsOf } from './catalogue.ts';
import { type Check, mustBeKnown } from './check.ts';
import { type Joinery, measuredName } from './joinery.ts';
import type { Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec } from './spec.ts';
import { parseLayer } from './text-forms.ts';

/** Round a leaf, m: 2 to 3 mm round an inset one, as much between two before the edges; common practice. */
const LEAF_GAP = 0.0025;

export function fillJoinery({ joinery = {} }: FileSpec, doors: readonly string[], ledger: Ledger): Joinery {
  const { housing, measured = {} } = joinery;
  const file: FilePath = ['joinery'];
  if (joinery.corners !== undefined) ledger.note('joinery.corners', ledger.given([...file, 'corners']));
  return {
    corners: joinery.corners ?? 'butt',
    ...(housing === undefined
      ? {}
      : {
          housing: ledger.number('joinery.housing', [{ quantity: housing, file: [...file, 'housing'] }], {
            value: 0,
            how: 'given',
          }),
        }),
    leaves: Object.fromEntries(
      doors.map((id) => {
        const { lies, gap } = joinery.doors?.[id] ?? {};
        const at = [...file, 'doors', id];
        if (lies !== undefined) ledger.note(`joinery.leaves.${id}.lies`, ledger.given([...at, 'lies']));
        return [
          id,
          {
            ...(lies === undefined ? {} : { lies }),
            gap: ledger.number(`joinery.leaves.${id}.gap`, [{ quantity: gap, file: [...at, 'gap'] }], {
              value: LEAF_GAP,
              how: '2 to 3 mm, common practice',
            }),
          },
        ];
      }),
    ),
    measured: Object.fromEntries(
      Object.entries(measured).flatMap(([name, quantity]) => {
        const layer = parseLayer(name);
        if (isFault(layer)) return [];
        const key = measuredName(layer.board, layer.thickness);
        ledger.note(`joinery.measured.${key}`, ledger.given([...file, 'measured', name]));
        return [[key, quantity.value] as const];
      }),
    ),
  };
}

/** A board that is far from what is written on it is another board. */
const FURTHEST = 0.25;

export function checkJoinery(check: Check): void {
  const { joinery = {}, cabinet, parts } = check.spec;
  const doors = [...Object.keys(cabinet?.doors ?? {}), ...(cabinet?.door === undefined ? [] : ['door'])];
  for (const id of Object.keys(joinery.doors ?? {})) mustBeKnown(check, ['joinery', 'doors', id], 'door', id, doors);
  for (const [name, quantity] of Object.entries(joinery.measured ?? {})) {
    const path: FilePath = ['joinery', 'measured', name];
    const layer = parseLayer(name);
    if (isFault(layer)) {
      check.say(path, {
        code: layer.code,
        what: layer.what,
        allowed: 'a board and the thickness that is written on it, such as plywood 18 mm',
        mend: layer.mend,
      });
      continue;
    }
    if (findPart(parts, 'boards', layer.board) === undefined) {
      mustBeKnown(check, path, 'board', layer.board, kindsOf(parts, 'boards'));
    } else if (Math.abs(quantity.value - layer.thickness) > FURTHEST * layer.thickness) {
      check.say(path, {
        code: 'value-out-of-bounds',
        what: `it is more than a quarter off the ${name} that is written on it`,
        allowed: 'what a caliper says of that board',
        mend: 'measure again, or write the board that it is',
      });
    }
  }
}
