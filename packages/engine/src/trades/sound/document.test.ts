import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatQuantity } from '../../units/format.ts';
import { cabinetByHand, runByHand } from '../run-by-hand.ts';
import { meanNoiseLimit } from './limits.ts';
import { sound } from './sound.ts';

const text = readFileSync(join(import.meta.dirname, '../../../../../docs/sound.md'), 'utf8');

describe('the sound document', () => {
  it.each(['day', 'night'] as const)('cross: lists the limit by %s with its value and source', (when) => {
    const { id, value, source } = meanNoiseLimit(cabinetByHand, when);
    const row = text.split('\n').find((line) => line.startsWith(`| \`${id}\` `) && line.includes('WHO'))!;
    expect(row).toContain(formatQuantity('sound-level', value));
    expect(source).toContain('WHO, Guidelines for Community Noise (1999)');
  });

  it('cross: tells of every finding that there is', () => {
    const limits = { 'fan-noise': 30, 'fan-noise-night': 30 };
    const wishes = { desk: [{ hours: [0, 3600], limitDbA: 30 }] } as const;
    const cabinet = { ...cabinetByHand, limits, sound: { ...cabinetByHand.sound, people: wishes } };
    const found = [...sound.measure!(runByHand({ cabinet })), ...sound.standing!(cabinet)];
    expect(found.length).toBeGreaterThan(5);
    for (const { quantity } of found) expect(text).toContain(`\`${quantity}\``);
  });
});
