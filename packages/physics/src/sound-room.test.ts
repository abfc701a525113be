import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eyringTime, powerFromPressure, reverberationTime, roomConstant, roomTransfer } from './sound-room.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('reverberation', () => {
  it('cross: 0.161 V/A, and Eyring is Sabine where little is swallowed', () => {
    expect(reverberationTime(35, 10)).toBeCloseTo((0.161 * 35) / 10, 2);
    expect(eyringTime(35, 66, 0.001) / reverberationTime(35, 0.066)).toBeCloseTo(1, 2);
  });

  it('property: Eyring is always the shorter', () => {
    fc.assert(
      fc.property(between(0.01, 0.9), (absorption) => {
        expect(eyringTime(35, 66, absorption)).toBeLessThanOrEqual(reverberationTime(35, 66 * absorption));
      }),
    );
  });
});

describe('roomTransfer', () => {
  it('limit: near by, the free field; far off, the room alone', () => {
    expect(roomTransfer(0.01, 1, 20)).toBeCloseTo(-powerFromPressure(0, 0.01, 1), 2);
    expect(roomTransfer(1000, 2, 20)).toBeCloseTo(10 * Math.log10(4 / 20), 4);
  });

  it('property: falls with distance and with what the room swallows', () => {
    fc.assert(
      fc.property(between(0.2, 10), between(1, 200), (distance, constant) => {
        expect(roomTransfer(2 * distance, 2, constant)).toBeLessThan(roomTransfer(distance, 2, constant));
        expect(roomTransfer(distance, 2, 2 * constant)).toBeLessThan(roomTransfer(distance, 2, constant));
      }),
    );
  });
});

describe('the rest', () => {
  it('exact: R is A where little is swallowed and grows beyond it', () => {
    expect(roomConstant(0.01, 60)).toBeCloseTo(0.01, 5);
    expect(roomConstant(30, 60)).toBeCloseTo(60, 12);
  });

  it('exact: a source on a table has half the power of one that hangs free and is as loud', () => {
    expect(powerFromPressure(40, 1, 1) - powerFromPressure(40, 1, 2)).toBeCloseTo(10 * Math.log10(2), 12);
  });

  it.each([
    ['no absorption', () => reverberationTime(30, 0), 'reverberationTime: absorption is 0'],
    ['a room that swallows all', () => eyringTime(30, 60, 1), 'eyringTime: absorption is 1'],
    ['no distance', () => roomTransfer(0, 2, 10), 'roomTransfer: distance is 0'],
    ['more absorption than walls', () => roomConstant(70, 60), 'roomConstant: surface less absorption is -10'],
    ['no distance of a level', () => powerFromPressure(30, 0, 1), 'powerFromPressure: distance is 0'],
  ])('exact: %s is refused by name', (_, call, message) => {
    expect(call).toThrow(message);
  });
});
