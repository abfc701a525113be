import { describe, expect, it } from 'vitest';
import { formatComplaint } from '../cabinet/complaint.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { type OpenedJobFile, type QueueFilesAnswer, readQueueFiles } from './queue-files.ts';

const HOUR = 3600;

/** Two printers, the right one with a larger bed and half the acceleration; everything invented. */
const text = (jobs: string): string => `
stillair: 1
people: { desk: { at: [400 mm, -1500 mm, 1200 mm], hours: 8:00 to 18:00 } }
cabinet: { inside: 900 mm x 700 mm x 1900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { lower: { z: 0 mm to 940 mm }, upper: { z: 960 mm to 1900 mm } }
machines:
  left: { kind: moving bed 220, bay: lower }
  right: { kind: moving bed 300, bay: upper }
days: { usual: {} }
queue:
  from: 2026-11-30 7:00
  length: 3 d
  present: { daily: 8:00 to 20:00 }
  jobs:
${jobs}
`;

/** 100 mm at 1 mm/s for each hundred seconds, 2 m of filament in all, printed on 100 x 40 mm. */
const lines = (turns: number, far = 100): string =>
  ['M83', 'M104 S245', 'M140 S95', 'M204 S1000', 'G1 X10 Y10 Z0.2 F6000']
    .concat(
      Array.from(
        { length: turns },
        (_, at) => `G1 X${at % 2 === 0 ? 10 + far : 10} Y${10 + (40 * at) / turns} E${2000 / turns} F60`,
      ),
    )
    .join('\n')
    .concat('\nM104 S0\nM140 S0\n');

async function* piecesOf(content: string): AsyncGenerator<Uint8Array> {
  const bytes = new TextEncoder().encode(content);
  for (let at = 0; at < bytes.length; at += 77) yield bytes.slice(at, at + 77);
}

function answered(
  jobs: string,
  files: Readonly<Record<string, string>>,
  opened: string[] = [],
): Promise<QueueFilesAnswer> {
  const file = 'test.yaml';
  const answer = readCabinet(file, text(jobs));
  if (!answer.ok) throw new Error(answer.complaints.map(formatComplaint).join('\n'));
  const { cabinet, origins } = answer;
  return readQueueFiles(
    { file, text: text(jobs), cabinet, origins },
    {
      open: async (path): Promise<OpenedJobFile> => {
        opened.push(path);
        const content = files[path];
        if (content === undefined) return { ok: false, problem: 'there is no such file' };
        return { ok: true, bytes: content.length, pieces: piecesOf(content) };
      },
    },
  );
}

async function read(jobs: string, files: Readonly<Record<string, string>>) {
  const answer = await answered(jobs, files);
  if (!answer.ok) throw new Error(answer.complaints.map(formatComplaint).join('\n'));
  return answer.source.cabinet.queue!;
}

async function complaints(jobs: string, files: Readonly<Record<string, string>>): Promise<string> {
  const answer = await answered(jobs, files);
  if (answer.ok) throw new Error('it should not be read');
  return answer.complaints.map(formatComplaint).join('\n\n');
}

const one = 'parts/one.gcode';

describe('job files of the queue', () => {
  it('exact: time, filament, set-points and extents come from the file, entries keep their order', async () => {
    const queue = await read(
      `    a: { machine: left, material: ABS, job-file: ${one} }
    b: { machine: left, material: PLA, for: 2 h }
    c: { machine: right, material: ABS, job-file: ${one}, copies: 2 }`,
      { [one]: lines(36) },
    );
    expect(queue.unread).toEqual({});
    expect(Object.keys(queue.jobs)).toEqual(['a', 'b', 'c']);
    const { a } = queue.jobs;
    // 36 lines of 100 mm, a little aslant, at 1 mm/s; starting and stopping takes milliseconds.
    expect(a!.duration).toBeGreaterThan(HOUR);
    expect(a!.duration).toBeLessThan(HOUR + 10);
    expect(a).toMatchObject({ nozzle: 245 + 273.15, bed: 95 + 273.15, jobFile: one, remarks: [] });
    expect(a!.partSize).toBeCloseTo(0.1, 6);
    // 2 m of 1.75 mm: 4.811 cm³ of ABS, at 1.04 g/cm³ as the catalogue has it.
    expect(a!.mass * 1000).toBeCloseTo((2 * Math.PI * 1.75 ** 2 * 1.04) / 4, 2);
  });

  it('property: is opened once for all entries that name it, and machines on which it would not stay are left out', async () => {
    const opened: string[] = [];
    const jobs = `    a: { material: ABS, job-file: ${one} }\n    b: { material: ABS, job-file: ${one}, for: 5 h }`;
    const answer = await answered(jobs, { [one]: lines(36, 260) }, opened);
    expect(opened).toEqual([one]);
    if (!answer.ok) throw new Error('it reads');
    const { a, b } = answer.source.cabinet.queue!.jobs;
    expect(a!.machines).toEqual(['right']);
    expect(a!.remarks).toEqual([
      expect.stringMatching(/^it does not go onto left: bed left beside what is printed is short by \d+ mm$/),
    ]);
    expect(b!.duration).toBe(5 * HOUR);
  });

  it('property: what is written goes first, and says so', async () => {
    const { a } = (
      await read(
        `    a: { machine: left, material: ABS, job-file: ${one}, for: 90 min, mass: 9 g, nozzle: 250 °C, bed: 95 °C, part-size: 150 mm, base: 120 mm x 60 mm }`,
        { [one]: lines(36) },
      )
    ).jobs;
    expect(a).toMatchObject({ duration: 1.5 * HOUR, mass: 0.009, nozzle: 523.15, partSize: 0.15 });
    expect(a!.remarks).toEqual([
      'for: 1 h 30 min is taken as it is written; its job file comes to 1 h, heating included',
      'mass: 9 g is taken as it is written; its job file comes to 5 g',
      'nozzle: 250 °C is taken as it is written; its job file comes to 245 °C',
      'part-size: 150 mm is taken as it is written; its job file comes to 100 mm',
    ]);
  });

  it('exact: what cannot be so is complained of at its place, with the place in the job file', async () => {
    const told = await complaints(
      `    a: { machine: left, material: ABS, job-file: ${one}, for: 20 min }
    b: { machine: left, material: ABS, job-file: ${one}, base: 30 mm x 30 mm }
    c: { machine: left, material: ABS, job-file: parts/far.gcode }
    d: { machine: left, material: ABS, job-file: parts/none.gcode }
    e: { machine: left, material: ABS, job-file: parts/torn.gcode }
    f: { machine: left, material: ABS, job-file: ${one}, due: Mon 7:30 }`,
      { [one]: lines(36), 'parts/far.gcode': lines(2, 260), 'parts/torn.gcode': 'G1 X1\nG1 X--2\nG1 Y--3\n' },
    );
    expect(told).toMatchInlineSnapshot(`
      "test.yaml:15:72  error  job-file-conflict
        15 | …l: ABS, job-file: parts/one.gcode, for: 20 min }
           |                                          ^^^^^^ its job file takes at least 1 h, every move at full speed
        allowed: 1 h or more
        to mend: take it out: the job file says how long it takes

      test.yaml:16:73  error  job-file-conflict
        16 | …: ABS, job-file: parts/one.gcode, base: 30 mm x 30 mm }
           |                                          ^^^^^^^^^^^^^ its job file prints on 100 mm x 38.9 mm, lines for priming and skirts too
        allowed: 100 mm x 38.9 mm or more
        to mend: take it out: the job file says where it prints

      test.yaml:17:50  error  fits-no-machine
        17 |     c: { machine: left, material: ABS, job-file: parts/far.gcode }
           |                                                  ^^^^^^^^^^^^^^^ it goes onto none of left: left: bed left beside what is printed is short by 35 mm
        allowed: a job file that stays on the bed and in the frame of one of its machines
        to mend: name a larger machine, or make it anew

      test.yaml:18:50  error  job-file-missing
        18 |     d: { machine: left, material: ABS, job-file: parts/none.gcode }
           |                                                  ^^^^^^^^^^^^^^^^ its job file cannot be read: there is no such file
        allowed: a file that is there, by its path from the folder of this file on
        to mend: put it there, mend the path, or write for: in its place

      test.yaml:19:50  error  job-file-refused
        19 |     e: { machine: left, material: ABS, job-file: parts/torn.gcode }
           |                                                  ^^^^^^^^^^^^^^^^ its job file is refused: parts/torn.gcode:2:4 X is followed by a sign or a point, but by no number, and 1 fault more
        allowed: a letter and a number, such as X12.5
        to mend: make the file anew, as it is probably damaged here

      test.yaml:20:72  error  deadline-impossible
        20 | …l: ABS, job-file: parts/one.gcode, due: Mon 7:30 }
           |                                          ^^^^^^^^ it cannot be done by Mon 7:30: begun at Mon 7:00 it ends at Mon 8:00
        allowed: Mon 8:00 or later
        to mend: give it more time, or make it shorter"
    `);
  });

  it.each([
    '../one.gcode',
    '/etc/one.gcode',
    'parts/../../one.gcode',
    '.hidden/one.gcode',
    'C:/one.gcode',
    'parts\\\\one.gcode',
    'parts//one.gcode',
    '',
  ])('exact: a path below the folder of the file, not %j', (path) => {
    const answer = readCabinet('test.yaml', text(`    a: { machine: left, material: ABS, job-file: "${path}" }`));
    if (answer.ok) throw new Error('it should not be read');
    expect(answer.complaints).toMatchObject([{ code: 'path-wrong', where: { line: 15, column: 50 } }]);
  });

  it('limit: an entry with neither says what it lacks; a person may stop it', async () => {
    const answer = readCabinet('test.yaml', text('    a: { machine: left, material: ABS }'));
    if (answer.ok) throw new Error('it should not be read');
    expect(answer.complaints).toMatchObject([{ code: 'key-missing', mend: 'add "for", or "job-file"' }]);
    const file = 'test.yaml';
    const jobs = text(`    a: { machine: left, material: ABS, job-file: ${one} }`);
    const whole = readCabinet(file, jobs);
    if (!whole.ok) throw new Error('it reads');
    expect(Object.keys(whole.cabinet.queue!.unread)).toEqual(['a']);
    const open = async (): Promise<OpenedJobFile> => ({ ok: true, bytes: 9, pieces: piecesOf(lines(3)) });
    expect(await readQueueFiles({ file, text: jobs, ...whole }, { open, stop: () => true })).toMatchObject({
      stopped: true,
    });
  });

  it('limit: a file of more than 1 GB is not read', async () => {
    const file = 'test.yaml';
    const jobs = text(`    a: { machine: left, material: ABS, job-file: ${one} }`);
    const whole = readCabinet(file, jobs);
    if (!whole.ok) throw new Error('it reads');
    const open = async (): Promise<OpenedJobFile> => ({ ok: true, bytes: 2e9, pieces: piecesOf('') });
    expect(await readQueueFiles({ file, text: jobs, ...whole }, { open })).toMatchObject({
      ok: false,
      complaints: [{ code: 'job-file-large', what: 'its job file has 2000 MB' }],
    });
  });
});
