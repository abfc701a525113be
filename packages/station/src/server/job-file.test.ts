import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fixture } from '../fixture-files.ts';
import { jobFile } from './job-file.ts';
import { SECRET, type Trial, trial } from './trial.ts';

const gcode = 'G1 X10 E1 F600\n'.repeat(40_000);
let scratch: Trial;
beforeEach(() => {
  scratch = trial();
  mkdirSync(join(scratch.folder, 'parts'));
  writeFileSync(join(scratch.folder, 'parts/hook.gcode'), gcode);
  writeFileSync(join(scratch.folder, 'parts/other.gcode'), SECRET);
  symlinkSync('../../secret.yaml', join(scratch.folder, 'parts/out.gcode'));
  symlinkSync('../..', join(scratch.folder, 'parts/up'));
  mkdirSync(join(scratch.folder, 'parts/folder.gcode'));
});
afterEach(() => scratch.remove());

const queued = (...paths: string[]): string =>
  `${fixture('hall.yaml')}queue:\n  from: 2026-11-30 7:00\n  jobs:\n${paths.map((path, at) => `    a${at}: { material: PLA, job-file: ${path} }`).join('\n')}\n`;

const ask = (path: string, name = 'hall.yaml', only?: string): Promise<Response> =>
  jobFile({ folder: scratch.folder, only }, name, path);

describe('a job file for the page', () => {
  it('is what the saved cabinet file names, whole, with its length', async () => {
    scratch.write('hall.yaml', queued('parts/hook.gcode'));
    for (const only of [undefined, 'hall.yaml']) {
      const answer = await ask('parts/hook.gcode', 'hall.yaml', only);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('content-length')).toBe(String(gcode.length));
      expect(await answer.text()).toBe(gcode);
    }
  });

  it('is nothing that the saved cabinet file does not name, though it lies there', async () => {
    scratch.write('hall.yaml', queued('parts/hook.gcode'));
    for (const path of [
      'parts/other.gcode',
      'hall.yaml',
      '../secret.yaml',
      'parts/../parts/hook.gcode',
      '/etc/hostname',
      '',
    ]) {
      const answer = await ask(path);
      expect(answer.status, path).toBe(404);
      expect(await answer.text()).not.toContain(SECRET);
    }
  });

  it.each(['parts/out.gcode', 'parts/up/secret.yaml', 'parts/folder.gcode', 'parts/none.gcode'])(
    'is nothing beyond the folder, no folder, nothing that is not there: %s',
    async (path) => {
      scratch.write('hall.yaml', queued(path));
      const answer = await ask(path);
      expect(answer.status).toBe(404);
      expect(await answer.json()).toEqual({ version: 1, problem: 'there is no such file' });
    },
  );

  it('is none of a file that is no cabinet, has faults, or does not belong to the session', async () => {
    scratch.write('hall.yaml', queued('../secret.yaml'));
    expect((await ask('../secret.yaml')).status).toBe(409);
    expect((await ask('parts/hook.gcode', 'none.yaml')).status).toBe(404);
    expect((await ask('parts/hook.gcode', 'hall.yaml', 'other.yaml')).status).toBe(404);
    expect((await jobFile(undefined, 'hall.yaml', 'parts/hook.gcode')).status).toBe(404);
  });

  it('is let go when nobody reads on', async () => {
    scratch.write('hall.yaml', queued('parts/hook.gcode'));
    const { body } = await ask('parts/hook.gcode');
    const reader = body!.getReader();
    expect((await reader.read()).done).toBe(false);
    await reader.cancel();
    expect((await reader.read()).done).toBe(true);
  });
});
