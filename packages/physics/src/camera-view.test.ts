import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldWidth, placeInPicture, type View } from './camera-view.ts';

const front: View = { at: [0, 0, 0], towards: [0, 2, 0], angles: [1, 0.8] };

describe('what a camera sees', () => {
  it('exact: the middle lies in the middle, the edge of the field on the edge', () => {
    expect(placeInPicture(front, [0, 5, 0])).toMatchObject({ across: 0, up: 0, depth: 5 });
    const edge = placeInPicture(front, [fieldWidth(3, 1) / 2, 3, fieldWidth(3, 0.8) / 2]);
    expect(edge.across).toBeCloseTo(1, 12);
    expect(edge.up).toBeCloseTo(1, 12);
  });

  it('exact: right is right and up is up, from wherever it looks', () => {
    const corner: View = { at: [0, 0, 1], towards: [1, 1, 0], angles: [1, 0.8] };
    expect(placeInPicture(corner, [1, 0.5, 0]).across).toBeGreaterThan(0);
    expect(placeInPicture(corner, [1, 1, 0.2]).up).toBeGreaterThan(0);
    const down: View = { at: [0, 0, 1], towards: [0, 0, 0], angles: [1, 1] };
    expect(placeInPicture(down, [0.2, 0, 0]).across).toBeGreaterThan(0);
    expect(placeInPicture(down, [0, 0.2, 0]).up).toBeGreaterThan(0);
  });

  it('limit: what is behind has a depth below 0', () => {
    expect(placeInPicture(front, [0, -1, 0]).depth).toBe(-1);
  });

  it('property: places on one ray share one spot of the picture', () => {
    const number = fc.double({ min: -0.3, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(number, number, fc.double({ min: 0.5, max: 4, noNaN: true }), (x, z, far) => {
        const near = placeInPicture(front, [x, 1, z]);
        const beyond = placeInPicture(front, [x * far, far, z * far]);
        expect(beyond.across).toBeCloseTo(near.across, 9);
        expect(beyond.up).toBeCloseTo(near.up, 9);
      }),
    );
  });

  it('refuses to look at itself, and angles that are none', () => {
    expect(() => placeInPicture({ ...front, towards: [0, 0, 0] }, [1, 1, 1])).toThrow('looks at is 0');
    expect(() => placeInPicture({ ...front, angles: [4, 1] }, [1, 1, 1])).toThrow('an angle is 4');
    expect(() => fieldWidth(0, 1)).toThrow('distance is 0');
  });
});
