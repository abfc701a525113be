// One run of each command through the program as it is installed. `npm run setup` builds it; `npm test` does so first.

import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const bin = fileURLToPath(new URL('../bin/stillair.mjs', import.meta.url));
const fixtures = fileURLToPath(new URL('../fixtures', import.meta.url));
const hall = join(fixtures, 'hall.yaml');
const scratch = mkdtempSync(join(tmpdir(), 'stillair-end-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function stillair(...words: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...words], { encoding: 'utf8', cwd: scratch });
  return { status, stdout, stderr };
}

describe('the built stillair', () => {
  it('check: judges a file, in colourless text when piped', () => {
    const { status, stdout, stderr } = stillair('check', hall, '--samples', '2');
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
    expect(stdout).toMatch(/^Two machines in the hall cupboard\n/);
    expect(stdout).not.toContain(String.fromCharCode(27));
  });

  it('check: gives the same bytes with two threads as with none', () => {
    const [alone, spread] = ['1', '2'].map((workers) =>
      stillair('check', hall, '--json', '--samples', '60', '--workers', workers),
    );
    expect(alone!.status).toBe(1);
    expect(spread!.stdout).toBe(alone!.stdout);
  });

  it('explain: tells the reason of one number', () => {
    expect(stillair('explain', hall, 'air-speed', '--samples', '0').stdout).toContain('From the inputs to the number');
  });

  it('compare: sets options side by side', () => {
    expect(stillair('compare', hall, '--samples', '2').stdout).toMatch(/\n +A +B +C\nlimits broken\n/);
  });

  it('faults: gives the same bytes with two threads as with none', () => {
    const [alone, spread] = ['1', '2'].map((workers) =>
      stillair('faults', hall, '--json', '--samples', '40', '--workers', workers),
    );
    expect(alone!.stderr).toBe('');
    expect(spread!.stdout).toBe(alone!.stdout);
  });

  it('care: begins a diary, adds to it, and reads it', () => {
    writeFileSync(join(scratch, 'hall.yaml'), readFileSync(hall));
    const words = ['--today', '2026-11-28'];
    expect(stillair('care', 'hall.yaml', '--ran', 'bracket', '--began', '2026-01-01', ...words).status).toBe(0);
    expect(stillair('care', 'hall.yaml', '--done', 'bay lower cleaned', ...words).status).toBe(0);
    const { status, stdout, stderr } = stillair('care', 'hall.yaml', '--samples', '0', ...words);
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
    expect(stdout).toContain('last 2026-11-28');
  });

  it('spread: gives the same bytes with two threads as with none', () => {
    const [alone, together] = ['1', '2'].map((workers) =>
      stillair('spread', hall, '--json', '--samples', '16', '--option', 'strong-fan', '--workers', workers),
    );
    expect(alone!.stderr).toBe('');
    expect(JSON.parse(alone!.stdout)).toMatchObject({ version: 1, samples: { ran: 16 } });
    expect(together!.stdout).toBe(alone!.stdout);
  });

  it('search: gives the same bytes with two threads as with none', () => {
    const free = [
      '--free',
      'air.exhaust.parts.1.speed=[50 %, 60 %, 70 %, 80 %, 90 %]',
      '--free',
      'air.intake.hole=[60 mm round, 100 mm round]',
    ];
    const [alone, spread] = ['1', '2'].map((workers) =>
      stillair('search', hall, '--want', 'quiet', 'cheap', ...free, '--json', '--samples', '4', '--workers', workers),
    );
    expect(alone!.stderr).toBe('');
    expect(spread!.stdout).toBe(alone!.stdout);
  });

  it('calibrate: gives the same bytes with two threads as with none, from readings typed by hand', () => {
    const readings = ['10:00 lower 29 °C', '12:00 lower 33 °C', '14:00 lower 34 °C', '14:00 upper 32 °C'];
    const [alone, together] = ['1', '2'].map((workers) =>
      stillair('calibrate', hall, '--readings', ...readings, '--fit', 'leakage', '--json', '--workers', workers),
    );
    expect(alone!.stderr).toBe('');
    expect(JSON.parse(alone!.stdout)).toMatchObject({ version: 1 });
    expect(together!.stdout).toBe(alone!.stdout);
  });

  it('drift: says of a log of an hour that it is too short to tell', () => {
    writeFileSync(join(scratch, 'log.csv'), 'time,lower (°C)\n2026-11-20 10:00,29\n');
    const { status, stdout, stderr } = stillair('drift', hall, 'log.csv');
    expect({ status, stderr }).toEqual({ status: 3, stderr: '' });
    expect(stdout).toContain('Too short to tell');
  });

  it('cost: tells what the parts of the days cost', () => {
    const { status, stdout, stderr } = stillair('cost', hall, '--samples', '0', '--today', '2026-11-28');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('as the cost trade says');
  });

  it('pare: takes parts out', () => {
    const { status, stdout } = stillair('pare', hall, '--samples', '0');
    expect(status).toBe(0);
    expect(stdout).toContain('what misses it');
  });

  it('papers: writes a set of files, the same bytes twice', () => {
    const write = (folder: string): string => stillair('papers', hall, '-o', folder, '--only', 'cut-list').stdout;
    expect(write('one')).toMatch(/cut-list\.pdf/);
    write('two');
    expect(readFileSync(join(scratch, 'one/contents.json'))).toEqual(readFileSync(join(scratch, 'two/contents.json')));
    expect(readFileSync(join(scratch, 'one/cut-list.pdf')).subarray(0, 8).toString()).toBe('%PDF-1.7');
  });

  it('plan: gives the same bytes with two threads as with none', () => {
    const queued = `${readFileSync(hall, 'utf8')}queue:
  from: 2026-11-30 7:00
  length: 1 d
  step: 30 min
  jobs: { hooks: { material: PLA, for: 2 h }, pegs: { material: PETG, for: 1 h } }
`;
    writeFileSync(join(scratch, 'queued.yaml'), queued);
    const [alone, spread] = ['1', '2'].map((workers) =>
      stillair('plan', 'queued.yaml', '--json', '--workers', workers),
    );
    expect(alone).toMatchObject({ status: 3, stderr: '' });
    expect(spread!.stdout).toBe(alone!.stdout);
  });

  it('shut-off: tells when sockets may go off', () => {
    const { status, stdout } = stillair('shut-off', hall);
    expect(status).toBe(0);
    expect(stdout).toContain('after its');
  });

  it('day: writes the picture into a file', () => {
    expect(stillair('day', hall, '--svg', 'day.svg')).toEqual({ status: 0, stdout: 'wrote day.svg\n', stderr: '' });
    expect(readFileSync(join(scratch, 'day.svg'), 'utf8')).toContain('</svg>');
  });

  it('new and schema: write a first file and its shape', () => {
    expect(stillair('new', '--out', 'first.yaml').status).toBe(0);
    expect(stillair('new', '--out', 'first.yaml').stderr).toBe(
      'stillair new: cannot write first.yaml: it is there already\n',
    );
    expect([0, 1, 3]).toContain(stillair('check', 'first.yaml', '--samples', '0').status);
    expect(JSON.parse(stillair('schema').stdout)).toHaveProperty('properties');
  });

  it('job: reads a job file, and what it comes to on a machine', () => {
    writeFileSync(join(scratch, 'line.gcode'), 'M83\nM104 S210\nG1 X10 Y10 Z0.2 F6000\nG1 X60 Y40 E3 F3000\nM104 S0\n');
    const { status, stdout, stderr } = stillair('job', 'line.gcode', '--cabinet', hall);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/\n {4}machine: left\n {4}material: PLA /);
    expect(stillair('job', 'picture.gcode').stderr).toBe(
      'stillair job: cannot read picture.gcode: there is no such file\n',
    );
  });

  it('parts: tells a part of the catalogue', () => {
    expect(stillair('parts', 'axial', '92', 'quiet').stdout).toContain('axial 92 mm quiet:');
  });

  it('network: solves a bare network', () => {
    expect(stillair('network', join(fixtures, 'one-zone.yaml')).stdout).toContain('temperature, °C');
  });

  it('workbench: opens a file for a browser until it is interrupted', async () => {
    writeFileSync(join(scratch, 'shelf.yaml'), readFileSync(hall));
    const running = spawn(process.execPath, [bin, 'workbench', 'shelf.yaml', '--port', '0'], { cwd: scratch });
    let [stdout, stderr] = ['', ''];
    running.stderr.setEncoding('utf8').on('data', (text: string) => {
      stderr += text;
    });
    await new Promise<void>((resolve) => {
      running.stdout.setEncoding('utf8').on('data', (text: string) => {
        stdout += text;
        if (stdout.includes('Ctrl-C closes it.\n')) resolve();
      });
      running.on('close', () => resolve());
    });
    const address = /^The workbench is open at (http:\/\/127\.0\.0\.1:\d+\/)\n/.exec(stdout)?.[1] ?? '';
    const page = await fetch(address);
    expect(await page.text()).toContain('<meta name="style-nonce"');
    expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(await (await fetch(`${address}api/session`)).json()).toMatchObject({ version: 1, open: 'shelf.yaml' });
    const etag = (await fetch(`${address}api/file?name=shelf.yaml`)).headers.get('etag')!;
    const save = { method: 'PUT', headers: { 'If-Match': etag }, body: 'title: Shelf\n' };
    expect((await fetch(`${address}api/file?name=shelf.yaml`, save)).status).toBe(204);
    expect(readFileSync(join(scratch, 'shelf.yaml'), 'utf8')).toBe('title: Shelf\n');
    running.kill('SIGINT');
    const status = await new Promise((resolve) => running.on('close', resolve));
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  it('says what is wrong with a file that is none, with status 2', () => {
    writeFileSync(join(scratch, 'picture.yaml'), new Uint8Array([137, 80, 78, 71, 0, 1]));
    expect(stillair('check', 'picture.yaml')).toEqual({
      status: 2,
      stdout: '',
      stderr: 'stillair check: cannot read picture.yaml: it is not text: it holds zero bytes\n',
    });
    expect(stillair('check', '.').stderr).toBe('stillair check: cannot read .: it is a folder, not a file\n');
  });

  it('leaves quietly when the reader of a pipe goes', () => {
    const command = `"${process.execPath}" "${bin}" parts | head -n 1; exit "\${PIPESTATUS[0]}"`;
    const { stdout, stderr } = spawnSync('bash', ['-c', command], { encoding: 'utf8' });
    expect({ stdout, stderr }).toEqual({ stdout: 'boards\n', stderr: '' });
  });

  it('stops with status 130 on an interrupt, and says what is missing', async () => {
    const running = spawn(process.execPath, [bin, 'check', hall, '--samples', '5000'], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let stderr = '';
    running.stderr.setEncoding('utf8').on('data', (text: string) => {
      stderr += text;
    });
    running.stdout.resume();
    setTimeout(() => running.kill('SIGINT'), 4000);
    const status = await new Promise((resolve) => running.on('close', resolve));
    expect(status).toBe(130);
    expect(stderr).toMatch(/^Stopped: \d+ of 5000 samples ran/);
  });
});
