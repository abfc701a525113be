import { describe, expect, it } from 'vitest';
import { fakeIo } from './fake-io.ts';
import { type Outs, printsTwice, tellWritten } from './write-out.ts';

describe('what is printed', () => {
  it.each<[Outs, string]>([
    [{ json: true, svg: '-' }, '--json and --svg -'],
    [{ network: true, json: true, svg: 'day.svg' }, '--json and --network'],
    [{ csv: '-', ics: '-' }, '--csv - and --ics -'],
  ])('is one thing: not two, as in %j', (outs, names) => {
    const io = fakeIo();
    expect(printsTwice('plan', outs, io)).toBe(true);
    expect(io.printed).toMatchObject({
      out: '',
      err: `stillair plan: ${names} cannot both be printed, as nobody could take them apart; write one of them into a file\n`,
    });
  });

  it.each<Outs>([{}, { json: true, svg: 'week.svg', ics: 'week.ics' }, { svg: '-' }])('may be %j', (outs) => {
    const io = fakeIo();
    expect(printsTwice('plan', outs, io)).toBe(false);
    expect(io.printed.err).toBe('');
  });

  it('does not get a word of files between what another program reads', () => {
    const io = fakeIo();
    tellWritten('week.svg', { json: true, svg: 'week.svg' }, io);
    tellWritten('week.svg', { svg: 'week.svg' }, io);
    expect(io.printed).toMatchObject({ err: 'wrote week.svg\n', out: 'wrote week.svg\n' });
  });
});
