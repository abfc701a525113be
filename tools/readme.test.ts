// The sessions that README.md shows are what the command prints today. To renew them: README=write npx vitest run tools/readme
// A session is a block ```console of lines `$ npx stillair …`, each followed by its output; a last line `…` leaves the rest out.

import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const readme = join(root, 'README.md');
const text = readFileSync(readme, 'utf8');
const session = /^```console\n(?<shown>[\s\S]*?)^```$/gm;
/** A session computes hundreds of days; on a small and busy machine that takes its time, ms. */
const SLOWEST = 300_000;
const turns = [...text.matchAll(session)].flatMap(({ groups }) => turnsIn(groups?.['shown'] ?? ''));

if (process.env['README'] === 'write') {
  writeFileSync(
    readme,
    text.replaceAll(session, (_, shown: string) => {
      const renewed = turnsIn(shown).map(({ command, cut, lines }) => {
        const output = cut ? [...printed(command).slice(0, lines.length), '…'] : printed(command);
        return [`$ npx stillair ${command}`, ...output].join('\n');
      });
      return `\`\`\`console\n${renewed.join('\n\n')}\n\`\`\``;
    }),
  );
}

it('shows at least one session', () => {
  expect(turns.length).toBeGreaterThan(0);
});

it.runIf(process.env['README'] !== 'write').each(turns)(
  'stillair $command prints what README.md shows',
  ({ command, lines, cut }) => {
    const output = printed(command);
    expect(cut ? output.slice(0, lines.length) : output).toEqual(lines);
  },
  SLOWEST,
);

interface Turn {
  readonly command: string;
  readonly lines: readonly string[];
  readonly cut: boolean;
}

function turnsIn(shown: string): Turn[] {
  return shown
    .split(/^\$ npx stillair /m)
    .slice(1)
    .map((turn) => {
      const [command = '', ...lines] = turn.trimEnd().split('\n');
      const cut = lines.at(-1) === '…';
      return { command, lines: cut ? lines.slice(0, -1) : lines, cut };
    });
}

function printed(command: string): string[] {
  const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
  const bin = join(root, 'packages/station/bin/stillair.mjs');
  const { stdout, stderr } = spawnSync(process.execPath, [bin, ...words], { cwd: root, encoding: 'utf8' });
  return (stdout + stderr).trimEnd().split('\n');
}
