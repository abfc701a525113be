import { describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type JobOptions, job } from './job.ts';

const square = `; made for a test
M140 S60
M104 S210
G28
M190 S60
M109 S210
M83
M106 S128
G1 X20 Y20 Z0.2 F6000
G1 X120 E5 F3000
G1 Y120 E5
G4 P500
G1 X20 E5
G1 Y20 E5
M205 X8
M104 S0
M140 S0
`;

async function run(options: Partial<JobOptions> = {}, text = square) {
  const files = { 'prints/frame.gcode': text, 'hall.yaml': fixture('hall.yaml') };
  const io = fakeIo({ files });
  const code = await job('prints/frame.gcode', { dwell: 'milliseconds', units: 'metric', ...options }, io);
  return { code, ...io.printed, written: io.written };
}

describe('stillair job', () => {
  it('enters the job into a diary as one that ran, with what the file tells of it', async () => {
    const into = { cabinet: 'hall.yaml', diary: 'hall.diary.yaml', on: '2026-11-20', start: '9:00' };
    const { code, out, written } = await run(into);
    expect({ code, out }).toEqual({
      code: 0,
      out: expect.stringMatching(
        /^hall\.diary\.yaml, jobs:\n {2}- \{ on: 2026-11-20, job: frame, machine: left, material: PLA, start: 9:00, for: \d+ s, mass: 0\.06 g \}\n$/,
      ) as string,
    });
    expect(written.get('hall.diary.yaml')).toContain('began: 2026-11-20');
    expect((await run({ diary: 'hall.diary.yaml' })).err).toContain('say with --cabinet');
  });

  it('tells the whole within 80 columns, with an entry for the cabinet file', async () => {
    const { code, out, err } = await run();
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^prints\/frame\.gcode: 5 moves in 17 lines\n/);
    expect(out).toMatch(/^duration +8\.9 s$/m);
    expect(out).toMatch(/^filament +20 mm of 1\.75 mm$/m);
    expect(out).toMatch(/^mass +0\.06 g \(taken for PLA, whose set-points are nearest\)$/m);
    expect(out).toMatch(/^waits, not timed +for heat 2 ×, for homing 1 ×$/m);
    expect(out).toContain('note: not understood and left out: M205 1 ×.');
    expect(out).toContain('jobs:\n  frame:\n    material: PLA # taken by its set-points: say if it is another\n');
    for (const line of out.split('\n')) expect(textWidth(line), line).toBeLessThanOrEqual(80);
  });

  it('sets it against its machine: status 0 when it stays there, 1 when not', async () => {
    const { code, out } = await run({ cabinet: 'hall.yaml', material: 'PETG' });
    expect(code).toBe(0);
    expect(out).toMatch(/^bed left beside what is printed +20 mm +holds$/m);
    expect(out).toContain('    machine: left\n    material: PETG\n');
    const wide = await run({ cabinet: 'hall.yaml' }, square.replace('X120', 'X240'));
    expect(wide.code).toBe(1);
    expect(wide.out).toMatch(/^bed left beside what is printed +-5 mm +FAILS$/m);
    const flat = await run({ cabinet: 'hall.yaml' }, 'G1 X10 F600\n');
    expect(flat.code).toBe(3);
    expect(flat.out).toMatch(/ needs a move that way +unknown$/m);
  });

  it('prints JSON and nothing else, in SI, with a version', async () => {
    const { out } = await run({ json: true, cabinet: 'hall.yaml', acceleration: '2 m/s2', diameter: '2.85 mm' });
    const data = JSON.parse(out) as Record<string, unknown>;
    expect(data).toMatchObject({
      version: 1,
      file: 'prints/frame.gcode',
      machine: 'left',
      diameter: 0.00285,
      rules: { acceleration: 2, deviation: 0.00002, dwell: 'milliseconds' },
      held: { nozzle: 483.15, bed: 333.15 },
      unknown: [{ word: 'M205', times: 1 }],
      entry: { name: 'frame', machine: 'left', material: 'PLA' },
    });
    expect(Object.keys(data)).toEqual(
      expect.arrayContaining(['duration', 'extents', 'setPoints', 'filament', 'mass', 'checks', 'heating', 'notes']),
    );
  });

  it('exact: P of a dwell counts what is said', async () => {
    expect((await run({ json: true, dwell: 'seconds' })).out).toContain('"dwell": 500');
    expect((await run({ json: true })).out).toContain('"dwell": 0.5');
  });

  it('says where a file is wrong, with status 2', async () => {
    const { code, out, err } = await run({}, 'G1 X10 F600\nG2 X20\n');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^prints\/frame\.gcode:2:1 {2}error {2}job-arc\n/);
    expect(err).toMatch(/\n1 fault in prints\/frame\.gcode; nothing was computed\.\n$/);
  });

  it.each([
    [{ machine: 'left' }, 'stillair job: --machine names one of a cabinet file: say which with --cabinet\n'],
    [{ cabinet: 'hall.yaml', machine: 'lift' }, 'stillair job: there is no machine "lift"; did you mean left?\n'],
    [{ material: 'PETF' }, 'stillair job: there is no material "PETF"; did you mean PETG?\n'],
    [{ cabinet: 'hal.yaml' }, 'stillair job: cannot read hal.yaml: there is no such file\n'],
    [{ diameter: '3 m' }, 'stillair job: --diameter: 3 m is not between 0.0005 and 0.01 m\n'],
  ])('exits 2 on %j with the reason', async (options, message) => {
    expect(await run(options)).toMatchObject({ code: 2, out: '', err: message });
  });

  it('exits 2 on a number without a unit, and on a file that is not there', async () => {
    const { code, err } = await run({ acceleration: '1500' });
    expect(code).toBe(2);
    expect(err).toMatch(/^stillair job: --acceleration: .*m\/s2/);
    const io = fakeIo();
    expect(await job('none.gcode', { dwell: 'milliseconds', units: 'metric' }, io)).toBe(2);
    expect(io.printed.err).toBe('stillair job: cannot read none.gcode: there is no such file\n');
  });

  it('stops when asked to, with status 130', async () => {
    const io = fakeIo({ files: { 'a.gcode': square.repeat(20) }, stop: AbortSignal.abort() });
    expect(await job('a.gcode', { dwell: 'milliseconds', units: 'metric' }, io)).toBe(130);
    expect(io.printed).toMatchObject({ out: '', err: 'Stopped: 0 of 1 MB were read\n' });
  });
});
