import { expect, it } from 'vitest';
import type { DayRecord, Table } from '../day/record.ts';
import { recordCsv } from './record-csv.ts';

const none: Table = { names: [], values: new Float64Array() };
const record = {
  network: { contaminants: [{ name: 'particles', unit: '1/m3' }] },
  times: Float64Array.of(0, 3600),
  temperatures: { names: ['bay, "low"', 'room'], values: Float64Array.of(300, 293.15, 310.15, 293.15) },
  pressures: none,
  flows: { names: ['inlet'], values: Float64Array.of(0, 1 / 3) },
  counterFlows: none,
  exchanges: none,
  fanSpeeds: none,
  bedPowers: none,
  thermostats: none,
  concentrations: { particles: { names: ['room'], values: Float64Array.of(3e9, 1.23456789e10) } },
  carbonLoads: none,
} as unknown as DayRecord;

it('exact: heads carry units, names with commas and quotes are quoted, temperatures are in degrees Celsius', () => {
  expect(recordCsv(record).split('\r\n')).toEqual([
    'time [s],"bay, ""low"" [degC]",room [degC],flow inlet [kg/s],particles room [1/m3]',
    '0,26.85,20,0,3000000000',
    '3600,37,20,0.3333333,12345680000',
    '',
  ]);
});
