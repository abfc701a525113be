// What a part is like whose care is overdue, as edits of the cabinet file: the same that a fault of it would be.

import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import type { CareTask } from '../cabinet/care.ts';
import { joinPath } from '../cabinet/edit-path.ts';
import { type Fault, faultId } from '../studies/fault.ts';
import { faultsOf } from '../studies/fault-list.ts';
import type { Criterion } from './care-due.ts';

export interface Ageing {
  readonly says: string;
  readonly edits: readonly Edit[];
  /** What is tried where the file cannot take `edits`. */
  readonly otherwise?: readonly Edit[];
}

/** The schema bears no more: four times the clean loss. */
const MOST_LOADED = 2;

/** Undefined where no finding asks after the part's age. */
export function ageingOf(task: CareTask, criteria: readonly Criterion[], cabinet: Cabinet): Ageing | undefined {
  const { kind, about = '', action, part } = task;
  const fault = (wanted: Fault['kind'], id: string): Ageing | undefined => {
    const found = faultsOf(cabinet).find((one) => one.id === faultId(wanted, id));
    if (found === undefined) return undefined;
    const { says, edits, otherwise } = found;
    return { says, edits, ...(otherwise === undefined ? {} : { otherwise }) };
  };
  const place = about.split('.').slice(1);
  switch (kind) {
    case 'filter':
      return action === 'change' ? loaded(part, criteria, fault('filter clogged', nameIn(cabinet, place))) : undefined;
    case 'carbon':
      return fault('carbon spent', nameIn(cabinet, place));
    case 'fan':
      return action === 'change' ? fault('fan stopped', nameIn(cabinet, place)) : undefined;
    case 'seal':
      return fault('seal worn', place.join('.'));
    case 'desiccant':
      return {
        says: `the desiccant of ${place.join('.')} is spent: its box is as damp as the air around it`,
        edits: [{ remove: [joinPath(['spools', place.join('.'), 'humidity'])] }],
      };
    case 'detector':
      return gone(['protection', 'detectors', place.slice(1).join('.')], `${part} is counted as if it were not there`);
    case 'chain':
      return gone(['protection', 'chain', place.slice(1).join('.')], `${part} is counted as if it were not there`);
    case 'extinguisher':
      return gone(['protection', 'extinguisher'], 'the extinguisher is counted as if it were not there');
    default:
      return undefined;
  }
}

function gone(path: readonly string[], says: string): Ageing {
  return { says, edits: [{ remove: [joinPath(path)] }] };
}

/** As faults name a part of a path: with its place when the path has several of its kind. */
function nameIn({ paths }: Cabinet, [id = '', at = '']: readonly string[]): string {
  const { parts } = paths[id]!;
  const { part } = parts[Number(at)]!;
  return parts.filter((other) => other.part === part).length > 1 ? `${id}.${Number(at) + 1}` : id;
}

/**
 * As loaded as its interval is used up, whichever is furthest: hours and months stand for the dust that nobody weighed. A pressure
 * that was read says it itself: its loss doubles with each time that its dust capacity is used.
 */
function loaded(part: string, criteria: readonly Criterion[], fault: Ageing | undefined): Ageing | undefined {
  if (fault === undefined) return undefined;
  const read = criteria.find(({ by }) => by === 'pressure');
  const share = read === undefined ? Math.max(1, ...criteria.map((one) => one.share)) : 1 + Math.log2(read.share);
  const load = Math.min(Math.max(share, 0), MOST_LOADED);
  const percent = `${Math.round(100 * load)} %`;
  const times = Math.round(10 * 2 ** load) / 10;
  const set = (edits: readonly Edit[]): Edit[] =>
    edits.map(({ set: old = {} }) => ({ set: Object.fromEntries(Object.keys(old).map((path) => [path, percent])) }));
  const how = read === undefined ? '' : ' by what was read';
  return {
    says: `the ${part} is loaded to ${percent}${how}: ${times} times its clean pressure loss`,
    edits: set(fault.edits),
    ...(fault.otherwise === undefined ? {} : { otherwise: set(fault.otherwise) }),
  };
}
