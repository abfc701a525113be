// Wall time of the built command on a small file, from nothing to its last line.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { line, measureWall } from './measure.mjs';

const command = join(import.meta.dirname, '../packages/station/bin/stillair.mjs');

/** Twenty-five lines; every figure is invented. */
const small = `# A small cabinet to time the command with. Everything here is invented.
stillair: 1
title: A small cabinet
currency: EUR

room: { size: 4 m x 3 m x 2.5 m, temperature: 20 °C, air-changes: 0.5 /h }
outdoors: { temperature: 8 °C }
people: {}

cabinet:
  inside: 700 mm x 680 mm x 790 mm
  made-of: OSB 15 mm
  door: { made-of: acrylic 4 mm, seal: rubber profile }

machines:
  heron: { kind: moving bed 220, at: [350 mm, 340 mm] }

air:
  vent: { from: room, to: inside, hole: 60 mm round, at: { face: back, z: 60 mm } }
  outlet: { from: inside, to: room, hole: 60 mm round, at: { face: back, z: 700 mm } }

days:
  monday:
    jobs:
      bracket: { machine: heron, material: PLA, start: 9:00, for: 5 h, mass: 90 g }
`;

export function run() {
  const folder = mkdtempSync(join(tmpdir(), 'small-cabinet-'));
  const file = join(folder, 'small.yaml');
  writeFileSync(file, small);
  const told = { status: 0, text: '' };
  const time = (words) =>
    measureWall(() => {
      const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
      told.status = status;
      told.text = stdout + stderr;
    });
  try {
    const bare = time(['-e', '0']);
    const help = time([command, '--help']);
    const check = time([command, 'check', file]);
    if (![0, 1, 3].includes(told.status)) throw new Error(`stillair check ended with ${told.status}:\n${told.text}`);
    const lines = small.trimEnd().split('\n').length;
    return [
      line('Node alone, doing nothing', bare.median, 'ms', { ratio: bare.ratio }),
      line('stillair --help', help.median, 'ms', { ratio: help.ratio }),
      line(`stillair check on a file of ${lines} lines`, check.median, 'ms', {
        ratio: check.ratio,
        limit: 400,
        note: `least ${check.least.toFixed(0)} ms; clock on the wall, so other programs count: load ${loadavg()[0].toFixed(1)}`,
      }),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
