// docs/command.md keeps up with the command line and with the kinds of units that JSON carries.

import { readFileSync } from 'node:fs';
import { kindNames, kindOf, parseQuantity } from '@stillair/engine';
import { expect, it } from 'vitest';
import { fakeIo } from './fake-io.ts';
import { runProgram } from './program.ts';

const page = readFileSync(new URL('../../../docs/command.md', import.meta.url), 'utf8');
const units = new Map(
  [...page.matchAll(/^\| (`[a-z`, -]+`) +\| (.+?) +\|$/gm)].flatMap(([, names = '', cell = '']) => {
    const each = cell.split(', ');
    return [...names.matchAll(/`([a-z-]+)`/g)].map(([, name], at) => [name!, each[at] ?? each[0]!] as const);
  }),
);

it('names the unit in JSON of every kind', () => {
  expect(kindNames.filter((kind) => !units.has(kind))).toEqual([]);
});

it.each(kindNames.filter((kind) => !['share', 'number', 'energy-price', 'money'].includes(kind)))(
  'exact: one of the unit that it names for %s is one in JSON',
  (kind) => {
    const unit = units.get(kind)!;
    expect(parseQuantity(kind, `1 ${unit}`), kindOf(kind).called).toMatchObject({ value: 1 });
  },
);

it.each([
  'care',
  'check',
  'compare',
  'cost',
  'faults',
  'spread',
  'pare',
  'search',
  'papers',
  'calibrate',
  'drift',
  'explain',
  'day',
  'new',
  'parts',
  'schema',
  'network',
  'workbench',
  'job',
  'shut-off',
  'plan',
])('shows every option of stillair %s', async (verb) => {
  const io = fakeIo();
  await runProgram([verb, '--help'], io);
  const options = [...io.printed.out.matchAll(/^ {2}(?:-\w, )?(--[a-z-]+)/gm)].map(([, option]) => option!);
  const section = page.split(/^## /m).find((text) => text.startsWith(`${verb}\n`)) ?? '';
  expect(options.filter((option) => option !== '--help' && !section.includes(option))).toEqual([]);
});
