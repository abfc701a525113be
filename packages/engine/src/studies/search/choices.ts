// What a search may change, as choices of values; each value is edits of the file, and so is a point of the search.

import type { Edit } from '../../cabinet/cabinet.ts';
import { sourceTree } from '../../cabinet/source-tree.ts';
import { readYaml } from '../../cabinet/yaml-document.ts';
import type { ReadSource } from '../../judge/judge.ts';
import type { ChoiceSpace, Point } from '../../numerics/choice-space.ts';
import { assumedChoices } from './assumed-choices.ts';
import { freeChoice, type SearchChoice } from './choice.ts';

/** What the file leaves free; where it does not say, what a person would think of. */
export function choicesOf(source: ReadSource): readonly SearchChoice[] {
  const plain = plainOf(source);
  const { search, options } = source.cabinet;
  if (search === undefined)
    return [
      ...assumedChoices(plain, source.cabinet),
      ...Object.keys(options).map((id) => optionChoice(source, id, true)),
    ];
  return [
    ...Object.entries(search.free).map(([path, { values, ordered }]) => freeChoice(plain, path, values, ordered)),
    ...search.options.map((id) => optionChoice(source, id, false)),
  ].filter(({ values }) => values.length > 1);
}

function plainOf({ file, text }: ReadSource): Readonly<Record<string, unknown>> {
  const document = readYaml(file, text);
  return 'complaints' in document ? {} : sourceTree(document).plain;
}

function optionChoice({ cabinet: { options } }: ReadSource, id: string, assumed: boolean): SearchChoice {
  const { edits } = options[id]!;
  return {
    id: `option ${id}`,
    values: [
      { says: 'left', edits: [] },
      { says: 'taken', edits },
    ],
    base: 0,
    ordered: false,
    assumed,
  };
}

export function spaceOf(choices: readonly SearchChoice[]): ChoiceSpace {
  return choices.map(({ values, ordered }) => ({ count: values.length, ordered }));
}

/** The edits of a point: values first, as options may move what a path counts; all single values in one edit. */
export function editsAt(choices: readonly SearchChoice[], point: Point): Edit[] {
  const edits = choices.flatMap(({ values }, at) => values[point[at]!]!.edits);
  const single = edits.filter((edit) => edit.set !== undefined && edit.add === undefined && edit.remove === undefined);
  const free = single.slice(0, edits.findIndex((edit) => !single.includes(edit)) >>> 0);
  const rest = edits.slice(free.length);
  const set = Object.assign({}, ...free.map((edit) => edit.set)) as Record<string, unknown>;
  return [...(Object.keys(set).length > 0 ? [{ set }] : []), ...rest];
}

/** What differs between two points. */
export function changesFrom(
  choices: readonly SearchChoice[],
  from: Point,
  to: Point,
): { readonly id: string; readonly from: string; readonly to: string }[] {
  return choices.flatMap(({ id, values }, at) =>
    from[at] === to[at] ? [] : [{ id, from: values[from[at]!]!.says, to: values[to[at]!]!.says }],
  );
}

/** The choices that differ from the cabinet as it stands. */
export function changesAt(choices: readonly SearchChoice[], point: Point): number[] {
  return choices.flatMap(({ base }, choice) => (point[choice] === base ? [] : [choice]));
}
