import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CabinetAndRoom, settledTogether, togetherAfter } from './cabinet-and-room.ts';
import {
  areaServed,
  carbonDioxideRise,
  cleanAirDelivery,
  concentrationAfter,
  type MixedZone,
  nearAndFar,
  purgeTime,
  settledConcentration,
} from './dilution.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

describe('one zone', () => {
  const zone: MixedZone = { volume: 30, source: 2, supply: 0.01, supplied: 5, cleaning: 0.02, deposition: 1e-4 };

  it('exact: at the settled concentration as much goes as comes', () => {
    const c = settledConcentration(zone);
    expect(zone.supply * c + zone.cleaning * c + zone.deposition * zone.volume * c).toBeCloseTo(2 + 0.01 * 5, 12);
  });

  it('limit: in the end every start settles there', () => {
    expect(concentrationAfter(zone, 400, 1e6)).toBeCloseTo(settledConcentration(zone), 9);
    expect(concentrationAfter(zone, 0, 1e6)).toBeCloseTo(settledConcentration(zone), 9);
  });

  it('property: two steps are one step of their sum', () => {
    fc.assert(
      fc.property(evenly(0, 5000), evenly(0, 5000), evenly(0, 500), (s, t, initial) => {
        const once = concentrationAfter(zone, initial, s + t);
        expect(concentrationAfter(zone, concentrationAfter(zone, initial, s), t)).toBeCloseTo(once, 8);
      }),
    );
  });

  it('limit: a tight zone fills evenly, and a purge is the time of the decay', () => {
    const tight: MixedZone = { volume: 30, source: 2, supply: 0, supplied: 0, cleaning: 0, deposition: 0 };
    expect(concentrationAfter(tight, 1, 600)).toBeCloseTo(1 + (2 * 600) / 30, 12);
    expect(() => settledConcentration(tight)).toThrow('loss rate is 0');
    const clean: MixedZone = { ...tight, source: 0, cleaning: 0.06 };
    expect(concentrationAfter(clean, 1, purgeTime(50, 0.06 / 30))).toBeCloseTo(1 / 50, 12);
    expect(purgeTime(50, 0.002, 3)).toBeCloseTo(3 * purgeTime(50, 0.002), 9);
  });
});

describe('rules of thumb', () => {
  it('cross: the room rule is a fifth of the level that 1.21 losses an hour alone would leave', () => {
    const [ceiling, source] = [2.4384, 1];
    const area = areaServed(0.05, ceiling);
    const room: MixedZone = {
      volume: area * ceiling,
      source,
      supply: (1.21 / 3600) * area * ceiling,
      supplied: 0,
      cleaning: 0,
      deposition: 0,
    };
    expect(settledConcentration({ ...room, cleaning: 0.05 }) / settledConcentration(room)).toBeCloseTo(0.2, 9);
  });

  it('cross: a decay test gives back the clean air that made the decay', () => {
    const zone: MixedZone = { volume: 28.5, source: 0, supply: 0.01, supplied: 0, cleaning: 0.05, deposition: 1e-4 };
    const slope = (tested: MixedZone) => -Math.log(concentrationAfter(tested, 1, 600)) / 600;
    expect(cleanAirDelivery(28.5, slope(zone), slope({ ...zone, cleaning: 0 }))).toBeCloseTo(0.05, 12);
  });

  it('limit: a wide-open near zone is the far zone', () => {
    const { near, far } = nearAndFar(2, 0.3, 1e9);
    expect(near).toBeCloseTo(far, 6);
    expect(carbonDioxideRise(0, 0.01)).toBe(0);
  });

  it('exact: each refuses nonsense', () => {
    expect(() => purgeTime(0.5, 1)).toThrow('ratio is 0.5');
    expect(() => purgeTime(10, 1, 20)).toThrow('mixing is 20');
    expect(() => nearAndFar(1, 0, 1)).toThrow('supply is 0');
    expect(() => carbonDioxideRise(1, 0)).toThrow('outdoorAir is 0');
    expect(() => cleanAirDelivery(0, 1, 1)).toThrow('volume is 0');
    expect(() => areaServed(-1)).toThrow('delivery is -1');
  });
});

describe('cabinet and room', () => {
  const base: CabinetAndRoom = {
    cabinetVolume: 0.5,
    roomVolume: 40,
    source: 1,
    exhaust: 0,
    exhaustEfficiency: 0,
    leakage: 5e-4,
    recirculation: 0,
    recirculationEfficiency: 0,
    cabinetDeposition: 0,
    roomDeposition: 0,
    outdoorAir: 6e-3,
    outdoorConcentration: 0,
    roomCleaning: 0,
  };

  it('property: without filters the room settles at source over outdoor air, whatever the cabinet', () => {
    fc.assert(
      fc.property(evenly(1e-5, 0.01), evenly(0, 0.02), evenly(0.05, 2), (leakage, exhaust, cabinetVolume) => {
        expect(settledTogether({ ...base, leakage, exhaust, cabinetVolume }).room * base.outdoorAir).toBeCloseTo(1, 8);
      }),
    );
  });

  it('property: what is put in is kept, filtered, deposited or blown out', () => {
    fc.assert(
      fc.property(
        evenly(0, 0.02),
        evenly(0, 1),
        evenly(0, 0.02),
        evenly(0, 1e-3),
        (exhaust, share, circulated, beta) => {
          const both: CabinetAndRoom = {
            ...base,
            exhaust,
            exhaustEfficiency: share,
            recirculation: circulated,
            recirculationEfficiency: 0.9,
            cabinetDeposition: beta,
            roomDeposition: 2 * beta,
            roomCleaning: 0.01,
          };
          const { cabinet, room } = settledTogether(both);
          const gone =
            cabinet * (share * exhaust + 0.9 * circulated + beta * both.cabinetVolume) +
            room * (both.outdoorAir + both.roomCleaning + 2 * beta * both.roomVolume);
          expect(gone).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('cross: the exact course agrees with a Runge-Kutta integration of the balances', () => {
    const both: CabinetAndRoom = {
      ...base,
      exhaust: 4e-3,
      exhaustEfficiency: 0.6,
      roomDeposition: 3e-4,
      outdoorConcentration: 7,
    };
    const inflow = both.exhaust + both.leakage;
    const slope = (c: number, r: number) => [
      (1 + inflow * (r - c)) / both.cabinetVolume,
      ((0.4 * both.exhaust + both.leakage) * c - inflow * r + both.outdoorAir * (7 - r)) / both.roomVolume - 3e-4 * r,
    ];
    let [c, r] = [200, 1];
    const h = 0.25;
    for (let i = 0; i < 2400; i++) {
      const [a1, b1] = slope(c, r) as [number, number];
      const [a2, b2] = slope(c + 0.5 * h * a1, r + 0.5 * h * b1) as [number, number];
      const [a3, b3] = slope(c + 0.5 * h * a2, r + 0.5 * h * b2) as [number, number];
      const [a4, b4] = slope(c + h * a3, r + h * b3) as [number, number];
      c += (h / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
      r += (h / 6) * (b1 + 2 * b2 + 2 * b3 + b4);
    }
    const exact = togetherAfter(both, { cabinet: 200, room: 1 }, 600);
    expect(exact.cabinet / c).toBeCloseTo(1, 8);
    expect(exact.room / r).toBeCloseTo(1, 8);
  });

  it('limit: nothing changes in no time, and everything settles in the end', () => {
    const start = { cabinet: 3, room: 4 };
    const now = togetherAfter(base, start, 0);
    expect(now.cabinet).toBeCloseTo(3, 9);
    expect(now.room).toBeCloseTo(4, 9);
    const end = togetherAfter(base, start, 1e7);
    expect(end.room).toBeCloseTo(settledTogether(base).room, 6);
    expect(() => settledTogether({ ...base, outdoorAir: 0 })).toThrow('loss of both zones');
    expect(() => settledTogether({ ...base, exhaustEfficiency: 2 })).toThrow('exhaustEfficiency is 2');
  });
});
