import { expect, it } from 'vitest';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { simulateDay } from '../../day/simulate-day.ts';
import { assemble } from '../../network/assemble.ts';
import type { Step } from '../measure.ts';
import { balanceAt, balanceSteps } from './balance.ts';
import { energyByUser } from './energy.ts';

const text = `
stillair: 1
room: { size: 4 m x 3.5 m x 2.5 m, temperature: 20 °C, held: yes }
cabinet: { inside: 800 mm x 600 mm x 860 mm, made-of: plywood 18 mm, door: { made-of: glass 4 mm, seal-gap: 0.5 mm } }
machines: { m: { kind: moving bed 220 } }
heats: { warm: { what: heater, power: 300 W, holds: 40 °C, control: { timer: 6:00 to 20:00 } } }
days: { d: { length: 1 d } }
`;

it('cross: a heater that holds the air is no bed; its energy and its share of the balance are those of its power', () => {
  const answer = readCabinet('heater.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('\n'));
  const assembly = assemble(answer.cabinet, 'd');
  const run = { cabinet: answer.cabinet, day: 'd', assembly, record: simulateDay(assembly.network) };
  const { beds, others } = energyByUser(run);
  expect(beds).toBe(0);
  const late = balanceAt(run, 'inside', 19.5 * 3600);
  expect(late.beds).toBe(0);
  // By then boards are warm through: what the air takes hardly changes, and the first hours took more than the last.
  expect(others).toBeGreaterThan(14 * 3600 * late.others);
  expect(others).toBeLessThan(14 * 3600 * 300);
  // 20 K over the room and 9 to 11 W/K of a bay half as high as usual, whose air is warmed directly.
  expect(late.others / 20).toBeGreaterThan(5);
  expect(late.others / 20).toBeLessThan(11);
});

it('exact: the steps of a balance name the overrides that the day used, and none where there are none', () => {
  const stepsOf = (file: string): readonly Step[] => {
    const answer = readCabinet('heater.yaml', file);
    if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('\n'));
    const assembly = assemble(answer.cabinet, 'd');
    const run = { cabinet: answer.cabinet, day: 'd', assembly, record: simulateDay(assembly.network) };
    return balanceSteps(run, 'inside', 12 * 3600);
  };
  const overridden = stepsOf(`${text}overrides: { bays.inside.leakage: 8 cm2, machines.m.heat: 40 W }\n`);
  expect(overridden.at(-1)!.inputs!.toSorted()).toEqual(['overrides.bays.inside.leakage', 'overrides.machines.m.heat']);
  expect(stepsOf(text).flatMap(({ inputs = [] }) => inputs.filter((path) => path.startsWith('overrides.')))).toEqual(
    [],
  );
});
