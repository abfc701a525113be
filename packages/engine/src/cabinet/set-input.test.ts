import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { assumedInputs, inputLabel } from './assumed-inputs.ts';
import { readCabinet } from './read-cabinet.ts';
import { setInput, setInputs } from './set-input.ts';

const text = readFileSync(join(import.meta.dirname, '../../cases/cabinet/everything.yaml'), 'utf8');
const answer = readCabinet('everything.yaml', text);
if (!answer.ok) throw new Error('the case must be readable');
const { cabinet, origins } = answer;

describe('assumedInputs', () => {
  const inputs = assumedInputs(origins);

  it('property: each stands in the cabinet, its middle is the number there, and its percentiles are in order', () => {
    for (const { path, spread } of inputs) {
      expect(spread.p10, path).toBeLessThan(spread.p90);
      expect(spread.p50, path).toBeGreaterThanOrEqual(spread.p10);
      expect(spread.p90, path).toBeGreaterThanOrEqual(spread.p50);
      if (spread.shape === 'log-normal') expect(spread.p10, path).toBeGreaterThan(0);
      expect(setInput(cabinet, path, spread.p50), path).toEqual(cabinet);
      expect(setInput(cabinet, path, spread.p90), path).not.toEqual(cabinet);
    }
  });

  it('property: every label is words, no path', () => {
    for (const { label } of inputs) expect(label).not.toMatch(/[a-z][A-Z]|parts\.|undefined/);
    expect(new Set(inputs.map(({ label }) => label)).size).toBeGreaterThan(inputs.length * 0.95);
  });

  it('exact: what decides is among them: room, seals, films, emissions, filter seat, sensor', () => {
    const paths = inputs.map(({ path }) => path);
    for (const wanted of [
      'room.airChangesPerHour',
      'doors.lower door.sealGap',
      'factors.insideFilm',
      'factors.bedLoss',
      'factors.fanFlow',
      'materials.ABS.emissions.particles.p50',
      'paths.clean.parts.0.seatGap',
      'outdoors.temperature.0.1',
    ]) {
      expect(paths).toContain(wanted);
    }
    expect(paths.filter((path) => path.startsWith('materials.TPU'))).toEqual([]);
  });
});

describe('setInput', () => {
  it('exact: one number is replaced, and the cabinet that was is not touched', () => {
    const changed = setInput(cabinet, 'room.airChangesPerHour', 2);
    expect(changed.room.airChangesPerHour).toBe(2);
    expect(cabinet.room.airChangesPerHour).toBe(0.8);
    expect(changed.machines).toBe(cabinet.machines);
  });

  it('cross: many at once are the same as one after the other, and the cabinet that was is not touched', () => {
    const before = structuredClone(cabinet);
    const inputs = Object.fromEntries(assumedInputs(origins).map(({ path, spread }) => [path, spread.p90] as const));
    const one = Object.entries(inputs).reduce((made, [path, value]) => setInput(made, path, value), cabinet);
    expect(JSON.stringify(setInputs(cabinet, inputs))).toBe(JSON.stringify(one));
    expect(cabinet).toEqual(before);
  });

  it('exact: ids with dots and places in lists are found', () => {
    expect(setInput(cabinet, 'room.background.PM2.5', 9).room.background['PM2.5']).toBe(9);
    expect(setInput(cabinet, 'outdoors.temperature.0.1', 270).outdoors.temperature).toEqual([[0, 270]]);
  });

  it('limit: what nature does not allow becomes the nearest that it does', () => {
    expect(setInput(cabinet, 'room.humidity', 1.2).room.humidity).toBe(1);
    expect(setInput(cabinet, 'machines.left.motors', -3).machines['left']!.motors).toBe(0);
    expect(setInput(cabinet, 'sensors.top.offset', -0.7).sensors['top']!.offset).toBe(-0.7);
    expect(setInput(cabinet, 'people.visitor.at.1', -2).people['visitor']!.at[1]).toBe(-2);
  });

  it('exact: nonsense is refused', () => {
    expect(() => setInput(cabinet, 'room.nothing', 1)).toThrow(
      'setInput: path is room.nothing; a number must stand there',
    );
    expect(() => setInput(cabinet, 'room', 1)).toThrow(RangeError);
    expect(() => setInput(cabinet, 'room.humidity', Number.NaN)).toThrow('value is NaN');
  });

  it('exact: a path without a label of its own still reads as words', () => {
    expect(inputLabel('machines.left.supply.idle')).toBe('idle of supply of left');
    expect(inputLabel('jointGap')).toBe('gap of the joints');
  });
});
