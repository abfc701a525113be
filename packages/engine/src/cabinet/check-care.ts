// Whether `care:` names parts that the cabinet has. Asked of the file as it stands: an option that takes a part out may leave its care.

import type { Cabinet } from './cabinet.ts';
import { carePartsOf } from './care-parts.ts';
import type { Complaint } from './complaint.ts';
import { quoted } from './complaint.ts';
import { nearest } from './nearest.ts';
import { oneOf } from './shape.ts';
import type { SourceTree } from './source-tree.ts';

export function careComplaints(cabinet: Cabinet, tree: SourceTree): Complaint[] {
  const tasks = carePartsOf(cabinet);
  const parts = [...new Set(tasks.map(({ part }) => part))];
  return Object.entries(cabinet.care).flatMap(([part, actions]): Complaint[] => {
    const known = tasks.filter((task) => task.part === part).map(({ action }) => action);
    if (known.length === 0) {
      const guess = nearest(part, parts);
      return [
        {
          code: 'care-unknown',
          what: `nothing in this cabinet is called ${quoted(part)}`,
          where: tree.keySpan(['care', part]),
          allowed: 'a part as "stillair care" names it, such as filter exhaust',
          mend: guess === undefined ? 'look at the list of "stillair care"' : `did you mean ${quoted(guess)}?`,
        },
      ];
    }
    return Object.keys(actions)
      .filter((action) => !known.some((other) => other === action))
      .map((action) => ({
        code: 'care-unknown',
        what: `nobody is asked to ${action} ${quoted(part)}`,
        where: tree.keySpan(['care', part, action]),
        allowed: oneOf(known),
        mend: `write ${known[0]!}, or take it out`,
      }));
  });
}
