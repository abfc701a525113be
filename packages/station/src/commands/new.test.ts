import { readCabinet } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { type FakeOutside, fakeIo } from '../fake-io.ts';
import { type NewOptions, newFile } from './new.ts';

async function run(options: NewOptions, outside: FakeOutside = {}) {
  const io = fakeIo(outside);
  return { code: await newFile(options, io), ...io.printed, written: io.written };
}

function readBack(text: string) {
  const reading = readCabinet('new.yaml', text);
  if (!reading.ok) throw new Error(reading.complaints[0]!.what);
  return reading.cabinet;
}

describe('stillair new', () => {
  it('writes a file that reads, though nothing is known and nobody can be asked', async () => {
    const { code, out, err } = await run({});
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('# assumed: ');
    expect(readBack(out).inside.width).toBeGreaterThan(0);
  });

  it('takes answers from options', async () => {
    const { out } = await run({
      inside: '30 in x 24 in x 60 in',
      machines: ['delta 200', 'delta 200'],
      material: 'ABS',
    });
    const cabinet = readBack(out);
    expect(cabinet.inside.width).toBeCloseTo(30 * 0.0254, 9);
    expect(Object.values(cabinet.machines).map(({ kind }) => kind)).toEqual(['delta 200', 'delta 200']);
  });

  it('asks what the options leave open; nothing and "don\'t know" are answers', async () => {
    const answers = ['Shed', '', "don't know", '?', 'I do not know', '', 'fixed bed 120, delta 200', '', '', '', ''];
    const { code, out, err } = await run({}, { answers });
    expect(code).toBe(0);
    expect(err.match(/\?\n/g)).toHaveLength(12);
    expect(readBack(out)).toMatchObject({ title: 'Shed' });
    expect(Object.values(readBack(out).machines).map(({ kind }) => kind)).toEqual(['fixed bed 120', 'delta 200']);
  });

  it('asks again when an answer cannot be used, and says why', async () => {
    const { out, err } = await run({ title: 'Shed' }, { answers: ['800 kg', '800 mm x 600 mm x 900 mm'] });
    expect(err).toMatch(/800 kg/);
    expect(readBack(out).inside.height).toBeCloseTo(0.9, 9);
  });

  it('writes into a file that is not there yet', async () => {
    const { out, written } = await run({ out: 'shed.yaml' });
    expect(out).toBe('wrote shed.yaml; next: stillair check shed.yaml\n');
    expect(readBack(written.get('shed.yaml')!)).toBeDefined();
  });

  it('exits 2 and leaves a file alone that is there already', async () => {
    const { code, err, written } = await run({ out: 'shed.yaml' }, { files: { 'shed.yaml': 'mine' } });
    expect({ code, err }).toEqual({ code: 2, err: 'stillair new: cannot write shed.yaml: it is there already\n' });
    expect(written.size).toBe(0);
  });

  it('exits 2 when an option cannot be used', async () => {
    const { code, err, out } = await run({ madeOf: 'cheese 18 mm' });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^stillair new: .*cheese/);
  });
});
