import { describe, expect, it } from 'vitest';
import { dayNumber } from '../units/calendar.ts';
import { readCsv } from './csv.ts';
import { dialReadings } from './dial.ts';
import type { Log, LogFault } from './log.ts';
import { splitHeader } from './log-unit.ts';
import type { Places } from './places.ts';
import { type LogOptions, readLog } from './read-log.ts';
import { stampOf } from './stamp.ts';

const places = {
  sensors: { top: {}, 'shelf-low': {} },
  bays: { upper: {}, lower: {} },
  machines: { ant: {} },
} as unknown as Places;

function read(text: string, options?: LogOptions): Log {
  const log = readLog('log.csv', text, places, options);
  if ('fault' in log) throw new Error(log.fault);
  return log;
}
const codes = ({ remarks }: Log): string[] => remarks.map(({ code }) => code);
const celsius = (log: Log, at = 0): number[] =>
  log.columns[at]!.readings.map(({ value }) => Math.round((value - 273.15) * 100) / 100);
const rows = (count: number, line: (at: number) => string): string =>
  Array.from({ length: count }, (_, at) => line(at)).join('\n');
const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

describe('a log with nothing wrong', () => {
  it('exact: time, kinds, places and SI values', () => {
    const log = read(
      'time,top (°C),Room [°F],humidity upper (%),power ant (kW),PM2.5 room (ug/m3)\n2026-11-20T08:00:00,31.5,68,40,0.12,7\n2026-11-20T08:01:00,31.6,68,41,0.13,8\n',
    );
    expect(log.firstDay).toBe('2026-11-20');
    expect(log.remarks).toEqual([]);
    expect(log.columns.map(({ kind, place }) => [kind, place.what, place.id, place.contaminant])).toEqual([
      ['temperature', 'sensor', 'top', undefined],
      ['temperature', 'room', '', undefined],
      ['humidity', 'bay', 'upper', undefined],
      ['power', 'machine', 'ant', undefined],
      ['concentration', 'room', '', 'PM2.5'],
    ]);
    expect(log.columns[0]!.readings[0]).toEqual({ time: 8 * 3600, value: 304.65 });
    expect(celsius(log, 1)).toEqual([20, 20]);
    expect(log.columns[2]!.readings[1]!.value).toBeCloseTo(0.41, 12);
    expect(log.columns[3]!.readings[0]!.value).toBe(120);
  });

  it.each([
    [';', 'Datum;top (°C)\n20.11.2026 08:00;31,5\n20.11.2026 08:05;31,7'],
    ['\t', 'time\ttop (°C)\n2026-11-20 08:00\t31.5\n2026-11-20 08:05\t31.7'],
    [',', '\uFEFF"time","top (°C)"\r\n"2026-11-20 08:00","31,5"\r\n"2026-11-20 08:05","31,7"\r\n'],
    ['|', '# a comment\ntime|top (°C)\n2026/11/20 8:00 am|31.5\n2026/11/20 8:05 am|31.7'],
  ])('exact: separator %j, with the decimal sign and dates that go with it', (separator, text) => {
    expect(readCsv(text).separator).toBe(separator);
    const log = read(text);
    expect(celsius(log)).toEqual([31.5, 31.7]);
    expect(log.columns[0]!.readings.map(({ time }) => time)).toEqual([28_800, 29_100]);
  });

  it('exact: lines before the header, a quoted separator, date and time apart', () => {
    const log = read('logger 3, serial 7\n\ndate;time;"top; probe (°C)"\n2026-11-20;8:00;30\n2026-11-20;8:10;31');
    expect(celsius(log)).toEqual([30, 31]);
  });

  it('exact: one reading a row', () => {
    const log = read('time;place;value\n14:05;top;41 °C\n14:10;room;70 °F\n14:20;top;42 °C');
    expect(log.columns.map(({ place, readings }) => [place.what, readings.length])).toEqual([
      ['sensor', 2],
      ['room', 1],
    ]);
    expect(celsius(log)).toEqual([41, 42]);
  });
});

describe('what is wrong with a log is told', () => {
  it('exact: times of day alone go on past midnight', () => {
    const log = read('time,top (°C)\n23:50,30\n0:10,31');
    expect(log.columns[0]!.readings.map(({ time }) => time)).toEqual([85_800, 87_000]);
  });

  it('out of order, twice the same time, a cell that is no number', () => {
    const log = read('time,top (°C)\n8:00,30\n8:10,31\n8:05,30.5\n8:10,99\n8:15,unavailable');
    expect(log.remarks.map(({ code, line, count }) => [code, line, count])).toEqual([
      ['no-number', 6, 1],
      ['out-of-order', 4, 1],
      ['duplicate', 5, 1],
    ]);
    expect(celsius(log)).toEqual([30, 30.5, 31]);
  });

  it('°F under a header that says °C, K under one that says °C, °C under one that says °F', () => {
    const column = (unit: string, from: number) =>
      read(`time,top (${unit})\n${rows(30, (at) => `${clock(480 + at)},${from + at / 10}`)}`);
    expect(codes(column('°C', 80))).toEqual(['unit-wrong']);
    expect(celsius(column('°C', 77))[0]).toBe(25);
    expect(celsius(column('°C', 298.15))[0]).toBe(25);
    expect(celsius(column('°F', 21))[0]).toBe(21);
    expect(codes(column('°C', 38))).toEqual([]);
    expect(codes(column('°F', 70))).toEqual([]);
  });

  it('values of a sensor without one, spikes and the impossible are left out', () => {
    const log = read(
      `time,top (°C)\n${rows(40, (at) => `${clock(480 + at)},${at === 7 ? -127 : at === 12 ? 85 : at === 20 ? 47 : at === 25 ? 200 : 30 + at / 20}`)}`,
    );
    expect(new Set(codes(log))).toEqual(new Set(['impossible', 'no-value', 'spike']));
    expect(log.columns[0]!.readings).toHaveLength(36);
  });

  it('a sensor that is stuck while another moves, and the gap that is left', () => {
    const log = read(
      `time,top (°C),upper (°C)\n${rows(72, (at) => `${clock(480 + 5 * at)},${(at > 20 && at < 60 ? 32 : 30 + at / 10).toFixed(1)},${(30 + at / 9).toFixed(1)}`)}`,
    );
    expect(log.remarks.map(({ code, column }) => [code, column])).toEqual([
      ['stuck', 'top'],
      ['gap', 'top'],
    ]);
    expect(log.columns[0]!.readings.length).toBeLessThan(36);
  });

  it('two columns that cannot be placed, and a header without a unit', () => {
    const log = read('time,top,attic (°C),pressure (hPa)\n8:00,30,20,1013\n8:05,30.2,20,1013');
    expect(log.remarks.map(({ code, column }) => [code, column])).toEqual([
      ['unit-missing', 'top'],
      ['not-placed', 'attic'],
      ['unit-unknown', 'pressure'],
    ]);
  });

  it('a column is placed where the person says, and a name that no column has is a fault', () => {
    const text = 'time,T1 (°C)\n8:00,30\n8:05,31';
    expect(read(text, { columns: { T1: 'shelf-low' } }).columns[0]!.place.id).toBe('shelf-low');
    const wrong = readLog('log.csv', text, places, { columns: { T2: 'top' } }) as LogFault;
    expect(wrong.fault).toContain('no column "T2"');
  });

  it('offsets from UTC change with summer time; the first row’s clock is kept', () => {
    const log = read('time,top (°C)\n2026-10-25T02:30:00+02:00,30\n2026-10-25T02:30:00+01:00,31');
    expect(log.columns[0]!.readings.map(({ time }) => time)).toEqual([9000, 12_600]);
    expect(codes(log)).toEqual(['clock-zone']);
  });

  it.each([
    ['', 'no header'],
    ['time,top (°C)\n', 'no rows'],
    ['a,b\nx,y\n', 'no column has times'],
    ['time,attic (°C)\n8:00,20\n8:05,21', 'could be placed'],
  ])('%j is a fault with words', (text, words) => {
    expect((readLog('log.csv', text, places) as LogFault).fault).toContain(words);
  });
});

describe('times', () => {
  it('exact: 12 h clocks, seconds since 1970, a decimal second', () => {
    expect(stampOf('12:30 am')!.seconds).toBe(1800);
    expect(stampOf('1795161600')).toEqual({ day: 20_777, seconds: 28_800, offset: 0 });
    expect(stampOf('2026-11-20T08:00:00.250Z')).toEqual({ day: 20_777, seconds: 28_800.25, offset: 0 });
    expect(stampOf('3/4/2026 8:00', 'month first')!.day).toBe(dayNumber(2026, 3, 4));
    expect(stampOf('yesterday')).toBeUndefined();
  });
});

describe('headers and dials', () => {
  it.each([
    ['Temp top (°C)', 'Temp top', '°C'],
    ['power / W', 'power', 'W'],
    ['room °F', 'room', '°F'],
    ['bay c', 'bay c', undefined],
    ['RH upper (% RH)', 'RH upper', '%'],
  ])('exact: %s', (header, name, unit) => {
    const split = splitHeader(header);
    expect([split.name, split.unit?.text]).toEqual([name, unit]);
  });

  it('exact: readings typed by hand', () => {
    const log = dialReadings(['14:05 top 41 °C', '14:00 top 40,5 °C', '14:05 room 70 °F'], places) as Log;
    expect(log.columns.map(({ place }) => place.what)).toEqual(['sensor', 'room']);
    expect(celsius(log)).toEqual([40.5, 41]);
    expect((dialReadings(['14:05 attic 41 °C'], places) as LogFault).mend).toContain('top');
    expect((dialReadings(['14:05 top 41'], places) as LogFault).fault).toContain('no unit');
    expect((dialReadings(['top 41 °C'], places) as LogFault).fault).toContain('cannot be read');
  });
});
