// Every answer of the network cases against its closed form or an independent integration, and published network results.

import type { OutsideCheck } from '@stillair/physics';
import { readNetwork } from '../network/read-network.ts';
import { answerNetwork, type RunAnswer } from './network-answer.ts';
import { type NetworkCase, runCase } from './network-case.ts';
import { networkCases } from './network-cases.data.ts';

export const checks: readonly OutsideCheck[] = [...networkCases.flatMap(checksOf), ...publishedChecks()];

function checksOf(known: NetworkCase): readonly OutsideCheck[] {
  let run: ((id: string) => number) | undefined;
  return known.answers.map(({ id, value, unit, method, tolerance }) => ({
    what: `${known.title}: ${id}`,
    formula: formulaOf(known.yaml),
    source: `${method} (network case ${known.id})`,
    known: 'independent' as const,
    expected: value,
    unit,
    tolerance,
    got: () => {
      run ??= runCase(known);
      return run(id);
    },
  }));
}

function formulaOf(yaml: string): string {
  if (/^analysis: operating_points/m.test(yaml)) return 'operatingPoints';
  return /^analysis: network/m.test(yaml) ? 'solveFlows' : 'simulateDay';
}

/** Flows as printed. That model's door differs in the third digit from the integral over the opening, in both directions alike. */
function publishedChecks(): readonly OutsideCheck[] {
  const rooms = networkCases.find(({ id }) => id === '51-three-rooms')!.yaml;
  const threeRooms = (
    what: string,
    expected: number,
    tolerance: number,
    got: (a: RunAnswer) => number,
  ): OutsideCheck => ({
    what: `three rooms at 25, 20 and 20 °C, outdoors 10 °C: ${what}`,
    formula: 'solveFlows',
    source: 'M. Wetter, Multizone airflow model in Modelica, 5th International Modelica Conference (2006), table 2',
    known: 'read',
    expected,
    unit: 'kg/s',
    tolerance,
    got: () => got(run(rooms)),
  });
  const door = `
analysis: network
zones:
- {name: warm, T: fixed, T_C: 30, pressure: fixed}
- {name: cold, T: fixed, T_C: 10, pressure: fixed}
exchanges:
- {name: door, a: warm, b: cold, law: vertical_opening, Cd: 0.65, width_m: 0.9, height_m: 2.1}
`;
  return [
    threeRooms('door, west to east', 0.4103, 6e-4, ({ counterFlows }) => counterFlows['door']![0]!),
    threeRooms(
      'door, east to west',
      0.4146,
      6e-4,
      ({ flows, counterFlows }) => counterFlows['door']![0]! - flows['door']![0]!,
    ),
    threeRooms('west to top', 0.0044, 5e-5, ({ flows }) => flows['west top']![0]!),
    threeRooms('top to east', 0.0044, 5e-5, ({ flows }) => flows['top east']![0]!),
    threeRooms('outdoors to east at the floor', 0.008, 5e-5, ({ flows }) => flows['bottom']![0]!),
    threeRooms('east to outdoors at the ceiling', 0.008, 5e-5, ({ flows }) => flows['roof']![0]!),
    {
      what: 'air speed each way in a doorway of 0.9 m by 2.1 m, Cd 0.65, 20 K about 293.15 K',
      formula: 'vertical-opening exchange',
      source:
        'International Building Performance Simulation Association, validation of an open door (OpenDoorTemperature)',
      known: 'read',
      expected: 0.25682,
      unit: 'm/s',
      tolerance: 1e-5,
      got: () => run(door).exchanges['door']![0]! / (0.9 * 2.1),
    },
  ];
}

function run(yaml: string): RunAnswer {
  const file = readNetwork('case.yaml', yaml);
  if ('complaints' in file) throw new Error(file.complaints.map(({ what }) => what).join('; '));
  return answerNetwork(file) as RunAnswer;
}
