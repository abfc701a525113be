import { describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type DayOptions, day } from './day.ts';

async function run(options: Partial<DayOptions>) {
  const io = fakeIo({ files: { 'hall.yaml': fixture('hall.yaml') } });
  return { code: await day('hall.yaml', { units: 'metric', ...options }, io), ...io.printed, written: io.written };
}

describe('stillair day', () => {
  it('tells the day by the hour, with what starts and ends, within 80 columns', async () => {
    const { code, out } = await run({});
    expect(code).toBe(0);
    expect(out.match(/^ *\d+:00 /gm)).toHaveLength(25);
    expect(out).toMatch(/^ 9:00 .*9:00 bracket/m);
    for (const line of out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(80);
  });

  it('keeps every number whole on a narrow terminal: what does not fit stands in a table beneath', async () => {
    const io = fakeIo({ files: { 'hall.yaml': fixture('hall.yaml') }, columns: 44 });
    await day('hall.yaml', { units: 'metric', at: '12:00' }, io);
    const { out } = io.printed;
    expect(out.match(/^ *time /gm)!.length).toBeGreaterThan(1);
    const wide = (await run({ at: '12:00' })).out.match(/^12:00 +(.*)$/m)![1]!.split(/ +/);
    const narrow = [...out.matchAll(/^12:00 +(.*)$/gm)].flatMap(([, numbers]) => numbers!.split(/ +/));
    expect(narrow).toEqual(wide);
    for (const line of out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(44);
  });

  it('tells one moment with --at', async () => {
    const { out } = await run({ at: '14:30' });
    expect(out.match(/^ *\d+:\d\d /gm)).toEqual(['14:30 ']);
  });

  it('writes picture and record into files, and prints them for -', async () => {
    const { out, written } = await run({ svg: 'day.svg', csv: 'day.csv' });
    expect(out).toBe('wrote day.csv\nwrote day.svg\n');
    expect(written.get('day.svg')).toMatch(/^<svg .*<\/svg>\n$/s);
    expect(written.get('day.csv')).toMatch(/^time \[s\],/);
    expect((await run({ svg: '-' })).out).toBe(written.get('day.svg'));
  });

  it('prints JSON that agrees with the table, and nothing else, with --json', async () => {
    const { out } = await run({ json: true, at: '12:00' });
    const { version, columns, rows } = JSON.parse(out) as {
      version: number;
      columns: { id: string }[];
      rows: { values: number[] }[];
    };
    const room = columns.findIndex(({ id }) => id === 'air.room');
    expect(version).toBe(1);
    expect((await run({ at: '12:00' })).out).toContain(` ${Number((rows[0]!.values[room]! - 273.15).toFixed(1))} `);
  });

  it('prints the network as a file that "stillair network" takes', async () => {
    const { out } = await run({ network: true });
    const { network } = await import('./network.ts');
    const io = fakeIo({ files: { 'network.yaml': out } });
    expect(await network('network.yaml', { at: [3600] }, io)).toBe(0);
  });

  it.each([
    [
      { at: '25:70' },
      'stillair day: --at: "25:70" is no time of day; write hours and minutes, such as 9:00 or 21:30\n',
    ],
    [{ at: '26:00' }, 'stillair day: --at: 26:00 is after the end of the day "usual", 24:00\n'],
    [{ day: 'usuel' }, 'stillair day: there is no day "usuel"; did you mean usual?\n'],
    [{ svg: '/nowhere/day.svg' }, 'stillair day: cannot write /nowhere/day.svg: its folder does not exist\n'],
  ])('exits 2 on %j with the reason', async (options, message) => {
    const { code, err } = await run(options);
    expect({ code, err }).toEqual({ code: 2, err: message });
  });
});
