// Adding a part from the catalogue: what kind, which one, in which bay. It lands in the file like anything that is written there.

import type { Cabinet, Edit } from '@stillair/engine';
import { useId, useState } from 'preact/compat';
import type { Vocabulary } from '../engine/protocol.ts';
import { freshId } from '../options/fresh-id.ts';

interface Addable {
  readonly says: string;
  /** Map of the file that the part goes into. */
  readonly group: string;
  /** Names of the catalogue to choose from; empty where there is nothing to choose. */
  readonly kinds: (names: Vocabulary['names']) => readonly string[];
  readonly taken: (cabinet: Cabinet) => object;
  readonly part: (kind: string, bay: string) => Readonly<Record<string, unknown>>;
}

const addables: readonly Addable[] = [
  {
    says: 'machine',
    group: 'machines',
    kinds: (names) => names['machines.kind'] ?? [],
    taken: ({ machines }) => machines,
    part: (kind, bay) => ({ kind, bay }),
  },
  {
    says: 'fan that blows out',
    group: 'air',
    kinds: ({ fan = [] }) => fan,
    taken: ({ paths }) => paths,
    part: (fan, bay) => ({ from: bay, to: 'room', parts: [{ fan }] }),
  },
  {
    says: 'hole that lets air in',
    group: 'air',
    kinds: () => [],
    taken: ({ paths }) => paths,
    part: (_, bay) => ({ from: 'room', to: bay, hole: '80 mm round' }),
  },
  {
    says: 'filter that turns the air round',
    group: 'air',
    kinds: ({ filter = [] }) => filter,
    taken: ({ paths }) => paths,
    part: (filter, bay) => ({ from: bay, to: bay, parts: [{ filter }, { fan: 'blower 97 mm' }] }),
  },
  {
    says: 'lamp, drier or heater',
    group: 'heats',
    kinds: (names) => names['heats.kind'] ?? [],
    taken: ({ heats }) => heats,
    part: (kind, bay) => ({ kind, bay }),
  },
  {
    says: 'thermometer',
    group: 'sensors',
    kinds: () => [],
    taken: ({ sensors }) => sensors,
    part: (_, bay) => ({ bay, height: '300 mm' }),
  },
];

export interface AddPartProps {
  readonly cabinet: Cabinet;
  readonly vocabulary: Vocabulary | undefined;
  /** `part` is the path under which it will be found. */
  readonly onAdd: (edits: readonly Edit[], part: string) => void;
}

export function AddPart({ cabinet, vocabulary, onAdd }: AddPartProps) {
  const id = useId();
  const bays = Object.keys(cabinet.bays);
  const [at, setAt] = useState(0);
  const [chosen, setChosen] = useState('');
  const [where, setWhere] = useState('');
  const addable = addables[at]!;
  const kinds = vocabulary === undefined ? [] : addable.kinds(vocabulary.names);
  const kind = kinds.includes(chosen) ? chosen : (kinds[0] ?? '');
  const bay = bays.includes(where) ? where : bays[0]!;
  const add = (): void => {
    const name = freshId(kind === '' ? addable.says : kind, Object.keys(addable.taken(cabinet)));
    onAdd([{ add: { [`${addable.group}.${name}`]: addable.part(kind, bay) } }], `${addable.group}.${name}`);
  };
  return (
    <details className="add-part">
      <summary>Add a part</summary>
      <div className="field">
        <label htmlFor={`${id}-what`}>what</label>
        <select id={`${id}-what`} value={at} onChange={(event) => setAt(Number(event.currentTarget.value))}>
          {addables.map(({ says }, index) => (
            <option key={says} value={index}>
              {says}
            </option>
          ))}
        </select>
      </div>
      {kinds.length > 0 && (
        <div className="field">
          <label htmlFor={`${id}-kind`}>which</label>
          <select id={`${id}-kind`} value={kind} onChange={(event) => setChosen(event.currentTarget.value)}>
            {kinds.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </div>
      )}
      <div className="field">
        <label htmlFor={`${id}-bay`}>in bay</label>
        <select id={`${id}-bay`} value={bay} onChange={(event) => setWhere(event.currentTarget.value)}>
          {bays.map((each) => (
            <option key={each} value={each}>
              {each}
            </option>
          ))}
        </select>
      </div>
      <button type="button" disabled={vocabulary === undefined} onClick={add}>
        Add it
      </button>
    </details>
  );
}
