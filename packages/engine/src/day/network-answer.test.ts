import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatComplaint } from '../cabinet/complaint.ts';
import { readNetwork } from '../network/read-network.ts';
import { answerNetwork, type RunAnswer } from './network-answer.ts';
import { runCase } from './network-case.ts';
import { networkCases } from './network-cases.data.ts';

const cases = join(import.meta.dirname, '../../cases');

describe.each(networkCases.map((known) => [known.id, known] as const))('case %s', (_, known) => {
  const run = runCase(known);
  it.each(known.answers)('exact: $id is $value $unit within $tolerance ($method)', ({ id, value, tolerance }) => {
    expect(Math.abs(run(id) - value)).toBeLessThanOrEqual(tolerance);
  });
});

it('exact: the collected cases are those of the folders', () => {
  const paths = ['network', 'frozen']
    .flatMap((folder) => readdirSync(join(cases, folder)).map((name) => join(cases, folder, name)))
    .filter((path) => path.endsWith('.expected.json'))
    .sort();
  const inFolders = paths.map((path) => {
    const expected = JSON.parse(readFileSync(path, 'utf8')) as {
      answers: readonly { id: string; value: number; tolerance_for_tool: number }[];
    };
    const answers = expected.answers.map((answer) => [answer.id, answer.value, answer.tolerance_for_tool]);
    return { yaml: readFileSync(path.replace('.expected.json', '.yaml'), 'utf8'), answers };
  });
  expect(
    networkCases.map(({ yaml, answers }) => ({ yaml, answers: answers.map((a) => [a.id, a.value, a.tolerance]) })),
  ).toEqual(inFolders);
});

describe('answerNetwork', () => {
  const text = networkCases.find(({ id }) => id === '36-bed-and-bay')!.yaml;

  it('exact: answers at the start, the end and 24 even points unless told otherwise', () => {
    const { times } = answer(text);
    expect(times).toHaveLength(26);
    expect([times[0], times[1], times[25]]).toEqual([0, 576, 14400]);
  });

  it('property: survives JSON, with a version, and every course is as long as the times', () => {
    const whole = answer(text, [0, 7000]);
    expect(JSON.parse(JSON.stringify(whole))).toEqual(whole);
    expect(whole).toMatchObject({ version: 1, id: '36-bed-and-bay', analysis: 'transient' });
    for (const course of Object.values({ ...whole.temperatures, ...whole.flows, ...whole.bedPowers })) {
      expect(course).toHaveLength(2);
    }
  });

  it('property: an answer does not depend on which other times are asked for, within the band of the solver', () => {
    const alone = answer(text, [9000]);
    const among = answer(text, [100, 777, 3333, 9000, 11111]);
    expect(among.temperatures['bay']![3]).toBeCloseTo(alone.temperatures['bay']![0]!, 3);
    expect(among.energies.bed['A']! / alone.energies.bed['A']!).toBeCloseTo(1, 4);
  });

  it('exact: a time outside the run is refused', () => {
    expect(() => answer(text, [14401])).toThrow(/time is 14401; it must be from 0 to 14400 s/);
    expect(() => answer(text, [Number.NaN])).toThrow(RangeError);
  });

  it('property: the parts of a fan path add up to the pressure difference that drives it', () => {
    const air = answer(networkCases.find(({ id }) => id === '28-fans-in-parallel')!.yaml);
    for (const [path, { fan = [], ...rest }] of Object.entries(air.partPressures)) {
      const lost = Object.values(rest).reduce((sum, [loss = 0]) => sum + loss, 0);
      expect(fan[0]! + air.pressureDifferences[path]![0]!).toBeCloseTo(lost, 6);
    }
  });
});

function answer(text: string, times?: readonly number[]): RunAnswer {
  const file = readNetwork('net.yaml', text);
  if ('complaints' in file) throw new Error(file.complaints.map(formatComplaint).join('\n'));
  return answerNetwork(file, times) as RunAnswer;
}
