// What a person would think of changing, for a file that does not say what is free: fans and their speed, filters and carbon of like size,
// holes, where they blow, thermostats, lamps. Every choice is told as assumed.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { kindsOf } from '../../cabinet/catalogue.ts';
import { joinPath } from '../../cabinet/edit-path.ts';
import { freeChoice, type SearchChoice, saysOf, valueIn } from './choice.ts';

type Plain = Readonly<Record<string, unknown>>;

export function assumedChoices(plain: Plain, { heats }: Pick<Cabinet, 'heats'>): SearchChoice[] {
  const free = (path: readonly (string | number)[], values: readonly unknown[], ordered: boolean): SearchChoice =>
    freeChoice(plain, joinPath(path), values, ordered, true);
  const air = Object.entries((plain['air'] ?? {}) as Record<string, Plain>).flatMap(([id, path]) => [
    ...holesOf(path['hole']).map((values) => free(['air', id, 'hole'], values, true)),
    ...(path['hole'] !== undefined && path['from'] !== path['to']
      ? [free(['air', id, 'blows'], ['in', 'wall', 'away'], false)]
      : []),
    ...((path['parts'] ?? []) as readonly Plain[]).flatMap((part, at) => ofPart(part, ['air', id, 'parts', at], free)),
  ]);
  const lamps = Object.keys(heats).flatMap((id) => {
    const kind = saysOf(valueIn(plain, joinPath(['heats', id, 'kind'])) ?? '');
    return kind.startsWith('LED')
      ? [
          free(
            ['heats', id, 'kind'],
            kindsOf(undefined, 'heats').filter((other) => other.startsWith('LED')),
            false,
          ),
        ]
      : [];
  });
  return [...air, ...lamps].filter(({ values }) => values.length > 1);
}

type Free = (path: readonly (string | number)[], values: readonly unknown[], ordered: boolean) => SearchChoice;

function ofPart(part: Plain, path: readonly (string | number)[], free: Free): SearchChoice[] {
  const kind = (key: string): string => saysOf(part[key] ?? '');
  if (part['fan'] !== undefined) {
    const control = part['control'] as Plain | undefined;
    const bySteps = control !== undefined && ('stages' in Object(control) || 'proportional' in Object(control));
    return [
      free([...path, 'fan'], likeFans(kind('fan')), false),
      ...(bySteps ? [] : [free([...path, 'speed'], ['40 %', '60 %', '80 %', '100 %'], true)]),
      ...(['on', 'off'] as const).flatMap((key) => {
        const written = control?.['thermostat'] === undefined ? undefined : control[key];
        const warmer = shifted(written);
        return warmer.length === 0 ? [] : [free([...path, 'control', key], warmer, true)];
      }),
    ];
  }
  for (const [key, group] of [
    ['filter', 'filters'],
    ['carbon', 'carbons'],
    ['duct', 'ducts'],
  ] as const)
    if (part[key] !== undefined) return [free([...path, key], likeKinds(kind(key), kindsOf(undefined, group)), false)];
  return holesOf(part['hole']).map((values) => free([...path, 'hole'], values, true));
}

/** Axial fans of this size, the next smaller and the next larger; or all blowers. */
function likeFans(kind: string): readonly string[] {
  const fans = kindsOf(undefined, 'fans');
  const blows = (name: string): boolean => name.includes('blower');
  if (blows(kind)) return fans.filter(blows);
  const sizes = [...new Set(fans.filter((name) => !blows(name)).map(sizeOf))].sort((a, b) => a - b);
  const at = sizes.indexOf(sizeOf(kind));
  const near = sizes.slice(Math.max(at - 1, 0), at + 2);
  return fans.filter((name) => !blows(name) && near.includes(sizeOf(name)));
}

/** Kinds of the same size, and other sizes of the same kind. */
function likeKinds(kind: string, all: readonly string[]): readonly string[] {
  const stem = kind.replace(/ \d+ mm$/, '');
  return all.filter((name) => sizeOf(name) === sizeOf(kind) || name.replace(/ \d+ mm$/, '') === stem);
}

function sizeOf(kind: string): number {
  return Number(/(\d+) mm$/.exec(kind.replace(/ (?:quiet|strong)$/, ''))?.[1] ?? 0);
}

/** Round holes of 70, 100 and 140 % of the diameter, to 5 mm. */
function holesOf(written: unknown): readonly (readonly string[])[] {
  const match = /^(\d+(?:\.\d+)?) mm round$/.exec(String(written));
  if (match === null) return [];
  const sizes = [0.7, 1.4].map((factor) => `${Math.round((factor * Number(match[1])) / 5) * 5} mm round`);
  return [[sizes[0]!, String(written), sizes[1]!]];
}

/** A temperature, 3 K lower and 3 K higher. */
function shifted(written: unknown): readonly string[] {
  const match = /^(-?\d+(?:\.\d+)?) °C$/.exec(String(written));
  return match === null ? [] : [-3, 0, 3].map((step) => `${Number(match[1]) + step} °C`);
}
