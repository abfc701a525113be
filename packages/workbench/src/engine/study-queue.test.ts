import { type ReadSource, readCabinet } from '@stillair/engine';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { replanned } from './study-plan.ts';
import { withJobFiles } from './study-queue.ts';

const text = `
stillair: 1
cabinet: { inside: 700 mm x 600 mm x 800 mm, made-of: plywood 12 mm, door: glass 4 mm }
machines: { left: { kind: moving bed 220 } }
days: { usual: {} }
queue: { from: 2026-11-30 7:00, jobs: { hook: { material: PLA, job-file: parts/hook.gcode } } }
`;
const answer = readCabinet('cabinet', text);
if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
const source: ReadSource = { file: 'cabinet', text, cabinet: answer.cabinet, origins: answer.origins };
const gcode = 'M83\nM104 S205\nG1 X10 Y10 Z0.2 F6000\nG1 X110 E9 F60\n';
const hooks = { progress: () => undefined, stop: () => false };

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('job files of the queue in the page', () => {
  it('exact: one that was handed in is read, by its name', async () => {
    const read = await withJobFiles(source, { jobFiles: [new File([gcode], 'hook.gcode')] }, hooks);
    if ('unreadable' in read) throw new Error('it was not read');
    expect(read.cabinet.queue!.jobs['hook']).toMatchObject({ nozzle: 205 + 273.15, jobFile: 'parts/hook.gcode' });
    expect(read.cabinet.queue!.jobs['hook']!.duration).toBeCloseTo(100, 0);
  });

  it('exact: without it nothing is computed, and it is named', async () => {
    const read = await withJobFiles(source, {}, hooks);
    expect(read).toMatchObject({
      unreadable: 'The queue',
      complaints: [
        { code: 'job-file-missing', what: 'its job file cannot be read: it was not handed in', where: { line: 6 } },
      ],
    });
  });

  it('exact: the local server is asked for it, and its refusal is told in its own words', async () => {
    const asked: string[] = [];
    const served = 'http://127.0.0.1:4180/api/job-file?name=hall.yaml';
    const reply = (make: () => Response): void => {
      vi.stubGlobal('fetch', (address: string) => {
        asked.push(address);
        return Promise.resolve(make());
      });
    };
    reply(() => new Response(gcode));
    expect(await withJobFiles(source, { served }, hooks)).toMatchObject({ cabinet: { queue: { unread: {} } } });
    expect(asked).toEqual([`${served}&path=parts%2Fhook.gcode`]);
    reply(() => Response.json({ version: 1, problem: 'there is no such file' }, { status: 404 }));
    expect(await withJobFiles(source, { served }, hooks)).toMatchObject({
      complaints: [{ what: 'its job file cannot be read: there is no such file' }],
    });
  });
});

describe('a plan made anew in the page', () => {
  it('exact: from a moment on, with what the plan before said, counted from its own first midnight', () => {
    const starts = [{ id: 'hook', machine: 'left', start: 9 * 3600 }];
    expect(replanned(source, { now: 'Tue 14:00', earlier: { origin: 20_786, starts, cuts: [] } })).toEqual({
      now: 86_400 + 14 * 3600,
      keep: [{ id: 'hook', machine: 'left', start: 9 * 3600 - 86_400 }],
      cuts: [],
    });
    expect(replanned(source, { earlier: { origin: 20_786, starts, cuts: [] } })).toEqual({});
    expect(() => replanned(source, { now: 'soon' })).toThrow('the moment is not understood');
  });
});
