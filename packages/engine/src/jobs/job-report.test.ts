import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { type JobSummary, usualRules } from './job.ts';
import { entryKeys, entryName, entryText } from './job-entry.ts';
import { catalogueMaterials, materialOf } from './job-material.ts';
import { type JobKnown, jobReport, rulesOn } from './job-report.ts';
import { endJob, openJob, takeBytes } from './read-job.ts';

const hall = readFileSync(new URL('../../../station/fixtures/hall.yaml', import.meta.url), 'utf8');

function cabinetOf(text: string): Cabinet {
  const answer = readCabinet('hall.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

function read(text: string): JobSummary {
  const job = openJob('test.gcode', usualRules);
  takeBytes(job, new TextEncoder().encode(text));
  const answer = endJob(job);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.job;
}

const at = (text = hall): NonNullable<JobKnown['at']> => ({ cabinet: cabinetOf(text), machine: 'left' });

/** A box printed from (x0, y0) to (x1, y1), its nozzle up to z. */
const box = (x0: number, y0: number, x1: number, y1: number, z = 20): string => `M140 S60
M104 S210
G28
M190 S60
M109 S210
M83
G1 X${x0} Y${y0} Z0.2 F6000
G1 X${x1} E4 F3000
G1 Y${y1} E4
G1 Z${z} F600
G1 X${x0} E4 F3000
G1 Y${y0} E4
M104 S0
M140 S0
`;

describe('what a job comes to', () => {
  it.each([
    ['PLA', 2.983],
    ['PETG', 3.055],
    ['ABS', 2.501],
  ])('cross: a metre of %s of 1.75 mm: %d g', (material, grams) => {
    const { mass } = jobReport('a.gcode', read('M83\nG1 X10 E1000 F600\n'), { material });
    expect(mass! * 1000).toBeCloseTo(grams, 3);
  });

  it('exact: the largest side and the height of what is printed', () => {
    const { partSize, height } = jobReport('a.gcode', read(box(20, 30, 80, 150)), {});
    expect(partSize).toBeCloseTo(0.12, 12);
    expect(height).toBeCloseTo(0.02, 12);
  });

  it('exact: the material whose set-points are nearest, or the one that is named; none far from all', () => {
    const all = catalogueMaterials();
    expect(materialOf(undefined, { nozzle: 486, bed: 331 }, all)).toMatchObject({ name: 'PLA', how: 'nearest' });
    expect(materialOf('ABS', { nozzle: 486 }, all)).toMatchObject({ name: 'ABS', how: 'given', density: 1040 });
    expect(materialOf(undefined, { nozzle: 700, bed: 450 }, all)).toBeUndefined();
    expect(materialOf('constructor', {}, all)).toBeUndefined();
  });

  it('limit: no set-point and no name: no material, no mass', () => {
    const report = jobReport('a.gcode', read('M83\nG1 X10 E5 F600\n'), {});
    expect(report.mass).toBeUndefined();
    expect(entryText(report.entry)).toContain('# material: say which');
  });
});

describe('on a machine', () => {
  const verdicts = (text: string, cabinet = hall): string[] =>
    jobReport('a.gcode', read(text), { at: at(cabinet) }).checks.map(({ id, verdict }) => `${id} ${verdict}`);
  const whole = ['print-width holds', 'print-depth holds', 'print-height holds', 'bed-way holds'];

  // Bed and travel of the machine are 235 mm, its frame ends 410 mm above its bed.
  it('exact: just inside, and just outside, each way', () => {
    expect(verdicts(box(0, 0, 235, 235, 410))).toEqual(whole);
    expect(verdicts(box(-0.01, 0, 235, 235, 410))).toEqual(['print-width fails', ...whole.slice(1)]);
    expect(verdicts(box(0, 0, 235.01, 235, 410))).toEqual(['print-width fails', ...whole.slice(1)]);
    expect(verdicts(box(0, 0, 235, 235, 410.01))).toEqual([
      ...whole.slice(0, 2),
      'print-height fails',
      'bed-way holds',
    ]);
    expect(verdicts(box(0, -0.01, 235, 235))).toEqual([whole[0], 'print-depth fails', whole[2], 'bed-way fails']);
  });

  it('exact: travel counts whether it prints there or not; the bed only where it prints', () => {
    const aside = box(10, 10, 90, 90).replace('M83\n', 'M83\nG1 X300 Y240 F6000\n');
    expect(verdicts(aside)).toEqual([...whole.slice(0, 3), 'bed-way fails']);
  });

  it('exact: a delta counts from the middle of its bed, and its bed stands still', () => {
    const delta = hall.replace('moving bed 220', 'delta 200');
    expect(verdicts(box(-100, -100, 100, 100), delta)).toEqual(whole.slice(0, 3));
    expect(verdicts(box(-100, -100, 100.01, 100), delta)).toEqual(['print-width fails', ...whole.slice(1, 3)]);
  });

  it('limit: what the file never does is unknown, and says so', () => {
    const { checks } = jobReport('a.gcode', read('G1 X10 F600\n'), { at: at() });
    expect(checks.map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown', 'unknown', 'unknown']);
    expect(checks[0]!.missing).toBe('a move that way');
  });

  it('exact: its acceleration and its filament are taken', () => {
    const own = hall.replace('kind: moving bed 220', 'kind: moving bed 220, shaking: { acceleration: 3 m/s2 }');
    expect(rulesOn(usualRules, { at: at(own) }).acceleration).toBe(3);
    expect(rulesOn(usualRules, {})).toEqual(usualRules);
    const thick = hall.replace('kind: moving bed 220', 'kind: moving bed 220, drive: { filament: 2.85 mm }');
    expect(jobReport('a.gcode', read(box(0, 0, 9, 9)), { at: at(thick) }).diameter).toBe(0.00285);
  });

  it('property: heating takes longer than without any loss, and comes before the print', () => {
    const job = read(box(20, 20, 90, 90));
    const { heating, entry } = jobReport('a.gcode', job, { at: at() });
    const { heatCapacity, powerMax } = at().cabinet.machines['left']!.bed;
    expect(heating).toBeGreaterThan((heatCapacity * (60 - 21)) / powerMax);
    expect(entry.for).toBeCloseTo(job.duration.estimate + heating!, 9);
    const weak = hall.replace('kind: moving bed 220', 'kind: moving bed 220, bed: { power: 5 W }');
    expect(jobReport('a.gcode', job, { at: at(weak) }).heating).toBe(Infinity);
  });
});

describe('its entry', () => {
  it('exact: a cabinet file takes it as it stands, and comes to the same', () => {
    const text = box(20, 20, 90, 140).replaceAll('E4', 'E400');
    const report = jobReport('prints/wall bracket v2.gcode', read(text), { at: at() });
    const [, ...lines] = entryText(report.entry).split('\n');
    const file = hall.replace(/usual: .*\n/, `usual:\n    jobs:\n${lines.map((line) => `    ${line}`).join('\n')}\n`);
    const job = cabinetOf(file).days['usual']!.jobs['wall bracket v2']!;
    expect(job).toMatchObject({ machine: 'left', material: 'PLA', start: 9 * 3600 });
    expect(job.nozzle).toBeCloseTo(483.15, 9);
    expect(job.bed).toBeCloseTo(333.15, 9);
    expect(job.duration).toBeCloseTo(report.entry.for, -0.5);
    expect(job.mass / report.mass!).toBeCloseTo(1, 2);
    expect(job.partSize).toBeCloseTo(0.12, 4);
  });

  it.each([
    ['bracket.gcode', 'bracket'],
    ['/home/of/some.one/part.v2.gcode', 'part-v2'],
    ['C:\\prints\\a "b".nc', 'a -b'],
    ['.gcode', 'job'],
    ['träger für regal.gcode', 'träger für regal'],
  ])('exact: %s is called %s', (file, name) => {
    expect(entryName(file)).toBe(name);
  });

  it.each([
    [45, '45 s'],
    [599.6, '600 s'],
    [3600, '1 h'],
    [100_000, '27 h 47 min'],
  ])('exact: %d s is written %s', (seconds, text) => {
    expect(entryText({ name: 'a', for: seconds })).toContain(`for: ${text}\n`.trimEnd());
  });

  it('exact: as keys of an edit it says what its text says', () => {
    const { entry } = jobReport('a.gcode', read(box(20, 20, 90, 90)), { at: at() });
    const text = entryText(entry);
    const keys = entryKeys(entry);
    expect(Object.keys(keys)).toEqual(expect.arrayContaining(['machine', 'material', 'start', 'for', 'bed']));
    for (const [key, value] of Object.entries(keys)) expect(text).toContain(`\n    ${key}: ${value}`);
  });

  it('exact: names that YAML would read otherwise stand in quotation marks', () => {
    const text = entryText({ name: 'yes', material: '3 in 1', for: 60, machine: 'left' });
    expect(text).toContain('\n  "yes":\n    machine: left\n    material: "3 in 1"\n');
  });
});
