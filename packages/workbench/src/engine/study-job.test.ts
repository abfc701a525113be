import { type ReadSource, readCabinet } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { readJobFile } from './study-job.ts';

const text = `
stillair: 1
cabinet: { inside: 700 mm x 600 mm x 800 mm, made-of: plywood 12 mm, door: glass 4 mm }
machines: { left: { kind: moving bed 220 } }
days: { usual: {} }
`;
const answer = readCabinet('cabinet', text);
if (!answer.ok) throw new Error('the cabinet cannot be read');
const source: ReadSource = { file: 'cabinet', text, cabinet: answer.cabinet, origins: answer.origins };

const line = 'G1 X60 Y60 E1 F3000\nG1 X120 Y60 E1\n';
const job = `M140 S60\nM104 S210\nM190 S60\nG28\nM83\nG1 Z0.2\n${line.repeat(2000)}`;
const always = { progress: () => undefined, stop: () => false };

describe('a job file that was picked', () => {
  it('cross: read in pieces it comes to what its lines say', async () => {
    const read = await readJobFile(
      source,
      { samples: 0, machine: 'left', file: new File([job], 'a b.gcode') },
      0,
      always,
    );
    if ('unreadable' in read) throw new Error('it was not read');
    expect(read.job.filament[0]!.length).toBeCloseTo(4000 * 0.001, 9);
    expect(read.keys).toMatchObject({ machine: 'left', material: 'PLA', bed: '60 °C' });
    expect(read.report.entry.name).toBe('a b');
  });

  it('exact: what cannot be read says where and why', async () => {
    const read = await readJobFile(source, { samples: 0, file: new File([''], 'empty.gcode') }, 0, always);
    expect(read).toMatchObject({ unreadable: 'empty.gcode', complaints: [{ code: 'job-empty' }] });
  });

  it('exact: stopped, it says so and not a half answer', async () => {
    const stopped = readJobFile(source, { samples: 0, file: new File([job], 'a') }, 0, { ...always, stop: () => true });
    await expect(stopped).rejects.toThrow('stopped before the file was read');
  });
});
