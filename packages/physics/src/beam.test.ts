import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointSag, simpleBeam, spreadSag } from './beam.ts';
import { beamFrequency, sagFrequency } from './beam-frequency.ts';
import { finalSag } from './creep.ts';
import { plywoodStiffness } from './cross-ply.ts';
import { bendingSection, bendingStress } from './section.ts';
import { pinStress, plywoodEmbedment } from './shelf-pin.ts';
import { hingePull, tiltLimit, tippingPush, tipRatio } from './tipping.ts';

const board = (breadth: number, height: number, stiffness: number): number => (stiffness * breadth * height ** 3) / 12;

describe('a beam on two supports', () => {
  it('exact: the whole load stands on its supports, whatever lies where', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 0, max: 500, noNaN: true }),
            fc.double({ min: 0, max: 1, noNaN: true }),
            fc.double({ min: 0, max: 1, noNaN: true }),
          ),
          { minLength: 1, maxLength: 5 },
        ),
        (loads) => {
          const { left, right } = simpleBeam(
            1,
            1000,
            loads.map(([force, a, b]) => ({ force, from: Math.min(a, b), to: Math.max(a, b) })),
          );
          expect(left + right).toBeCloseTo(
            loads.reduce((sum, [force]) => sum + force, 0),
            6,
          );
        },
      ),
    );
  });

  it('cross: a load spread over a hair is a force at its place, and many forces are a spread load', () => {
    const force = simpleBeam(0.9, 700, [{ force: 60, at: 0.3 }]);
    const narrow = simpleBeam(0.9, 700, [{ force: 60, from: 0.29995, to: 0.30005 }]);
    expect(narrow.sag / force.sag).toBeCloseTo(1, 6);
    const many = simpleBeam(
      0.9,
      700,
      Array.from({ length: 100 }, (_, at) => ({ force: 2, at: 0.9 * ((at + 0.5) / 100) })),
    );
    expect(many.sag / spreadSag('simple', 200, 0.9, 700)).toBeCloseTo(1, 3);
  });

  it('cross: the largest sag of uneven loads is that of a fine grid of finite differences', () => {
    const loads = [
      { force: 80, from: 0.1, to: 0.45 },
      { force: 50, at: 0.7 },
    ] as const;
    const count = 2000;
    const step = 1 / count;
    const { left, sag, moment } = simpleBeam(1, 1000, loads);
    const bent = Array.from({ length: count + 1 }, (_, at) => {
      const x = at * step;
      const spread = (80 / 0.35) * (Math.max(x - 0.1, 0) ** 2 - Math.max(x - 0.45, 0) ** 2) * 0.5;
      return left * x - spread - 50 * Math.max(x - 0.7, 0);
    });
    let [slope, height] = [0, 0];
    const heights = bent.map((m) => {
      height += slope * step;
      slope += (m * step) / 1000;
      return height;
    });
    const tilt = heights.at(-1)!;
    expect(sag).toBeCloseTo(-Math.min(...heights.map((h, at) => h - (tilt * at) / count)), 5);
    expect(moment).toBeCloseTo(Math.max(...bent), 3);
  });

  it('property: sag grows with the load and with the cube of the span, falls with stiffness', () => {
    const sag = (force: number, span: number, stiffness: number): number =>
      simpleBeam(span, stiffness, [{ force, from: 0.2 * span, to: 0.6 * span }]).sag;
    expect(sag(200, 1, 1000) / sag(100, 1, 1000)).toBeCloseTo(2, 9);
    expect(sag(100, 2, 1000) / sag(100, 1, 1000)).toBeCloseTo(8, 9);
    expect(sag(100, 1, 500) / sag(100, 1, 1000)).toBeCloseTo(2, 9);
  });

  it('exact: mirrored loads give the mirrored answer', () => {
    const one = simpleBeam(1, 500, [
      { force: 30, at: 0.2 },
      { force: 10, from: 0.5, to: 0.9 },
    ]);
    const other = simpleBeam(1, 500, [
      { force: 30, at: 0.8 },
      { force: 10, from: 0.1, to: 0.5 },
    ]);
    expect(other.sag).toBeCloseTo(one.sag, 12);
    expect(other.sagAt).toBeCloseTo(1 - one.sagAt, 6);
    expect(other.left).toBeCloseTo(one.right, 9);
  });

  it('cross: a worked shelf of 18 mm plywood over 900 mm with a machine of 12 kg on feet 250 mm from its ends', () => {
    const stiffness = board(0.45, 0.018, 7e9);
    const foot = (12 * 9.80665) / 2;
    const feet = simpleBeam(0.9, stiffness, [
      { force: foot, at: 0.25 },
      { force: foot, at: 0.65 },
    ]);
    expect(1000 * feet.sag).toBeCloseTo(0.873, 3);
    expect(1000 * spreadSag('simple', 2 * foot, 0.9, stiffness)).toBeCloseTo(0.73, 3);
    expect(1000 * pointSag('simple', 2 * foot, 0.9, stiffness)).toBeCloseTo(1.168, 2);
  });

  it('cross: a worked shelf of MDF, thicker, and with a strip under its edge', () => {
    const sag = (stiffness: number): number => 1000 * pointSag('simple', 25 * 9.80665, 1, stiffness);
    expect(sag(board(0.4, 0.018, 2.2e9))).toBeCloseTo(11.94, 2);
    expect(sag(board(0.4, 0.025, 2.2e9))).toBeCloseTo(4.458, 3);
    const lipped = bendingSection([
      { breadth: 0.4, bottom: 0, top: 0.018, stiffness: 2.2e9 },
      { breadth: 0.02, bottom: -0.04, top: 0, stiffness: 1e10 },
    ]).stiffness;
    expect(sag(lipped)).toBeCloseTo(0.856, 3);
  });

  it('cross: a worked pane of 6 mm over a metre with 32 kg/m², and with its own weight too', () => {
    const stiffness = board(1, 0.006, 70e9);
    const pane = simpleBeam(1, stiffness, [{ force: 32 * 9.80665, from: 0, to: 1 }]);
    expect(1000 * pane.sag).toBeCloseTo(3.243, 3);
    const part = { breadth: 1, bottom: 0, top: 0.006, stiffness: 70e9 };
    expect(bendingStress(pane.moment, bendingSection([part]), part) / 1e6).toBeCloseTo(6.54, 2);
    const both = simpleBeam(1, stiffness, [{ force: 47 * 9.80665, from: 0, to: 1 }]);
    expect(1000 * both.sag).toBeCloseTo(4.76, 2);
    expect(bendingStress(both.moment, bendingSection([part]), part) / 1e6).toBeCloseTo(9.6, 2);
  });

  it('limit: fixed ends sag a fifth under a spread load, a quarter under one in the middle', () => {
    expect(spreadSag('fixed', 1, 1, 1) / spreadSag('simple', 1, 1, 1)).toBeCloseTo(1 / 5, 12);
    expect(pointSag('fixed', 1, 1, 1) / pointSag('simple', 1, 1, 1)).toBeCloseTo(1 / 4, 12);
  });

  it.each([
    ['span 0', () => simpleBeam(0, 1, [])],
    ['a load beyond the span', () => simpleBeam(1, 1, [{ force: 1, at: 1.1 }])],
    ['a load that pulls up', () => simpleBeam(1, 1, [{ force: -1, at: 0.5 }])],
    ['no stiffness', () => spreadSag('simple', 1, 1, 0)],
    ['a force without end', () => pointSag('simple', Number.POSITIVE_INFINITY, 1, 1)],
    ['no parts', () => bendingSection([])],
    ['a part upside down', () => bendingSection([{ breadth: 1, bottom: 1, top: 0, stiffness: 1 }])],
  ])('limit: %s is refused', (_, call) => expect(call).toThrow(RangeError));
});

describe('a section of parts', () => {
  it('exact: one rectangle has E b h³/12, wherever it lies', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), (bottom) => {
        const { stiffness, neutral } = bendingSection([{ breadth: 0.3, bottom, top: bottom + 0.02, stiffness: 9e9 }]);
        expect(stiffness / board(0.3, 0.02, 9e9)).toBeCloseTo(1, 6);
        expect(neutral).toBeCloseTo(bottom + 0.01, 9);
      }),
    );
  });

  it('exact: a rectangle cut in two that hold together is itself', () => {
    const whole = bendingSection([{ breadth: 0.3, bottom: 0, top: 0.02, stiffness: 9e9 }]).stiffness;
    const halves = bendingSection([
      { breadth: 0.3, bottom: 0, top: 0.005, stiffness: 9e9 },
      { breadth: 0.3, bottom: 0.005, top: 0.02, stiffness: 9e9 },
    ]).stiffness;
    expect(halves / whole).toBeCloseTo(1, 12);
  });
});

describe('plywood from its veneers', () => {
  it('property: along and across add up to the veneer, along is the stiffer, and both near half with many plies', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.003, max: 0.06, noNaN: true }), (nominal) => {
        const { plies, along, across } = plywoodStiffness(nominal, 0.0014, 17.5e9);
        expect(plies % 2).toBe(1);
        expect(along + across).toBeCloseTo(17.5e9, 0);
        expect(along).toBeGreaterThan(across);
        expect(along / 17.5e9 - 0.5).toBeLessThan(1.5 / plies);
      }),
    );
  });
});

describe('how a board swings', () => {
  it('cross: the frequency of spread mass from its sag', () => {
    const [span, stiffness, mass] = [0.6, 1749.6, 28.888];
    const sag = spreadSag('simple', mass * 9.80665, span, stiffness);
    const factor = Math.sqrt((Math.PI ** 4 * 5) / 384);
    expect(beamFrequency('simple', span, stiffness, mass / span) / (factor * sagFrequency(sag))).toBeCloseTo(1, 9);
  });

  it('cross: worked shelf of 18 mm plywood: empty, and with 25 kg in its middle', () => {
    expect(beamFrequency('simple', 0.6, 1749.6, 3.888 / 0.6)).toBeCloseTo(71.7, 1);
    expect(sagFrequency(pointSag('simple', 25 * 9.80665, 0.6, 1749.6))).toBeCloseTo(19.85, 2);
    expect(beamFrequency('simple', 0.8, 1701, 24.896 / 0.8)).toBeCloseTo(18.15, 1);
  });
});

describe('what ends at shelves', () => {
  it('exact: no growth leaves the first sag; growth adds to it', () => {
    expect(finalSag(1.2, 0)).toBe(1.2);
    expect(finalSag(11.94, 2.25)).toBeCloseTo(38.8, 1);
    expect(() => finalSag(1, -0.1)).toThrow(RangeError);
  });

  it('exact: shear over the pin’s section, bearing over its shadow', () => {
    const { shear, bearing } = pinStress(100, 0.005, 0.01);
    expect((shear * Math.PI * 0.005 ** 2) / 4).toBeCloseTo(100, 9);
    expect(bearing * 0.005 * 0.01).toBeCloseTo(100, 9);
    expect(() => pinStress(1, 0, 1)).toThrow(RangeError);
  });

  it('limit: a thin pin in plywood meets a ninth of its density', () => {
    expect(plywoodEmbedment(1e-9, 500)).toBeCloseTo(55e6, -2);
    expect(() => plywoodEmbedment(0, 500)).toThrow(RangeError);
  });
});

describe('tipping', () => {
  it('exact: in balance the ratio is 1, and the push at the top is 0 when the weight stands on the feet', () => {
    expect(
      tipRatio([
        { mass: 3, behind: 0.2 },
        { mass: 2, behind: -0.3 },
      ]),
    ).toBeCloseTo(1, 12);
    expect(tippingPush(90, 0, 1.6)).toBe(0);
  });

  it('limit: nothing before the feet never tips forward', () => {
    expect(tipRatio([{ mass: 3, behind: 0.2 }])).toBe(Number.POSITIVE_INFINITY);
  });

  it('cross: a worked cabinet with its door open and loaded stands; with a shelf of 15 kg pulled out too it tips', () => {
    const [door, hung] = [
      { mass: 8, behind: -0.275 },
      { mass: 27.2, behind: -0.55 },
    ];
    expect(tipRatio([{ mass: 82, behind: 0.3 }, door, hung])).toBeCloseTo(24.6 / 17.16, 3);
    const out = tipRatio([{ mass: 67, behind: 0.3 }, door, hung, { mass: 15, behind: -0.45 }]);
    expect(out).toBeCloseTo(20.1 / 23.91, 3);
    expect(out).toBeLessThan(1);
  });

  it('cross: the push and the tilt agree: a push of m g tan θ at the height of the weight', () => {
    expect(tippingPush(50, 0.25, 0.8)).toBeCloseTo(50 * 9.80665 * Math.tan(tiltLimit(0.25, 0.8)), 9);
    expect((tiltLimit(0.3, 1) * 180) / Math.PI).toBeCloseTo(16.7, 1);
  });

  it('exact: the pull of a door turns about the lower hinge as its weight does', () => {
    expect(hingePull(8, 0.55, 0.9) * 0.9).toBeCloseTo(8 * 9.80665 * 0.275, 9);
    expect(() => hingePull(8, 0.55, 0)).toThrow(RangeError);
  });
});
