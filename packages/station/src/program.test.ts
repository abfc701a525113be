import { CARE_SAMPLES, PART_SAMPLES, SEARCH_MOST, SPREAD_SAMPLES } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { fakeIo } from './fake-io.ts';
import { runProgram } from './program.ts';
import { textWidth } from './text.ts';

async function run(...words: string[]) {
  const io = fakeIo();
  return { code: await runProgram(words, io), ...io.printed };
}

const verbs = [
  'calibrate',
  'care',
  'check',
  'compare',
  'cost',
  'day',
  'drift',
  'explain',
  'faults',
  'job',
  'network',
  'new',
  'papers',
  'pare',
  'parts',
  'plan',
  'schema',
  'search',
  'shut-off',
  'spread',
  'workbench',
];

describe('stillair', () => {
  it('prints its version', async () => {
    expect(await run('--version')).toMatchObject({ code: 0, out: '0.1.0\n' });
  });

  it('lists its commands, and says how to begin', async () => {
    const { code, out } = await run('--help');
    expect(code).toBe(0);
    for (const verb of verbs) expect(out).toMatch(new RegExp(`^ {2}${verb} `, 'm'));
  });

  it.each(verbs)('%s --help shows examples and exit status within 80 columns', async (verb) => {
    const { code, out } = await run(verb, '--help');
    expect(code).toBe(0);
    expect(out).toContain(`\nExamples:\n  stillair ${verb}`);
    expect(out).toContain('Exit status:');
    for (const line of out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(80);
  });

  it('lists no command that is not tried here', async () => {
    const { out } = await run('--help');
    const commands = out.slice(out.indexOf('Commands:'), out.indexOf('Examples:'));
    const listed = [...commands.matchAll(/^ {2}([a-z-]+) /gm)].map(([, verb]) => verb!);
    expect(new Set(listed)).toEqual(new Set([...verbs, 'help']));
  });

  it.each([
    ['care', '--samples', CARE_SAMPLES],
    ['cost', '--samples', PART_SAMPLES],
    ['search', '--most', SEARCH_MOST],
    ['spread', '--samples', SPREAD_SAMPLES],
  ])('cross: %s --help names the %s that the engine takes unless told otherwise', async (verb, option, usual) => {
    const { out } = await run(verb, '--help');
    const told = out.slice(out.indexOf(`  ${option} `)).match(/\(default:\s+(\d+)\)/);
    expect(Number(told?.[1])).toBe(usual);
  });

  it('exits 2 and shows its help when no command is given', async () => {
    const { code, err, out } = await run();
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('Usage: stillair');
  });

  it.each([
    [['chekc', 'a.yaml'], "stillair: unknown command 'chekc'\n(Did you mean check?)\nsee: stillair --help\n"],
    [['hall.yaml'], "stillair: unknown command 'hall.yaml'\nto check a cabinet file: stillair check hall.yaml\n"],
    [['check'], 'stillair check: no file was named\nsee: stillair check --help\n'],
    [
      ['check', 'a', 'b'],
      "stillair check: too many arguments for 'check'. Expected 1 argument but got 2.\nsee: stillair check --help\n",
    ],
    [
      ['check', 'a', '--jsn'],
      "stillair check: unknown option '--jsn'\n(Did you mean --json?)\nsee: stillair check --help\n",
    ],
    [
      ['day', 'a', '--units', 'feet'],
      "stillair day: option '--units <system>' argument 'feet' is not right. Allowed choices are metric, imperial.\nsee: stillair day --help\n",
    ],
    [
      ['check', 'a', '--samples', 'ten'],
      "stillair check: option '--samples <count>' argument 'ten' is not right. It takes a whole number from 0 to 10000.\nsee: stillair check --help\n",
    ],
    [
      ['network', 'a', '--at', '1,x'],
      "stillair network: option '--at <times>' argument '1,x' is not right. It takes seconds with commas between them, such as 0,3600.\nsee: stillair network --help\n",
    ],
  ])('exits 2 on %j with the reason and where to look', async (words, message) => {
    expect(await run(...words)).toMatchObject({ code: 2, out: '', err: message });
  });

  it('hands the exit status of a command on', async () => {
    expect(await run('day', 'missing.yaml')).toMatchObject({
      code: 2,
      err: 'stillair day: cannot read missing.yaml: there is no such file\n',
    });
    expect((await run('parts', 'fan', '92')).code).toBe(0);
  });
});
