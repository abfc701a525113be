// Do spools feed machines that exist with materials that exist, from places that exist?

import { kindsOf } from './catalogue.ts';
import { type Check, mustBeKnown } from './check.ts';
import { bayIds } from './check-carcass.ts';
import { quoted } from './complaint.ts';
import { OUTSIDE } from './power.ts';
import { oneOf } from './shape.ts';
import type { FilePath } from './source-tree.ts';

export function checkSpools(check: Check): void {
  const machines = check.ids('machines');
  const materials = [...check.ids('materials'), ...kindsOf(check.spec.parts, 'materials')];
  const places = [OUTSIDE, ...bayIds(check), ...check.ids('heats')];
  for (const [id, { machine, material, where, size, path: way }] of Object.entries(check.spec.spools ?? {})) {
    const path: FilePath = ['spools', id];
    mustBeKnown(check, [...path, 'material'], 'material', material, materials);
    if (machine !== undefined) mustBeKnown(check, [...path, 'machine'], 'machine', machine, machines);
    else if (machines.length !== 1)
      check.say(
        path,
        {
          code: 'key-missing',
          what: `there is no "machine" in ${quoted(path.join('.'))}, and there are ${machines.length} machines`,
          allowed: machines.length === 0 ? 'a machine, but there is none' : oneOf(machines),
          mend: machines.length === 0 ? 'add the machine first' : 'add machine: and the one that it feeds',
        },
        { key: true },
      );
    if (where !== undefined) mustBeKnown(check, [...path, 'where'], 'place', where, places);
    if (size !== undefined && size.length === 2 && size[0]! < 0.06)
      check.say([...path, 'size'], {
        code: 'value-out-of-bounds',
        what: 'no spool is that small across',
        allowed: 'diameter x width, such as 200 mm x 65 mm',
        mend: 'give the diameter first',
      });
    if (way?.guide === 'open' && way.friction !== undefined && way.friction.value > 0)
      check.say([...path, 'path', 'friction'], {
        code: 'friction-without-guide',
        what: 'there is no guide on which it could rub',
        allowed: 'guide: tube or printed, or no friction',
        mend: 'take friction: out, or name the guide',
      });
  }
}
