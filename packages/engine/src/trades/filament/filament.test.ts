import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { catalogueData } from '../../cabinet/catalogue.data.ts';
import { findPart } from '../../cabinet/catalogue.ts';
import type { Drive, SpoolPart } from '../../cabinet/filament.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { DayRun, Measure } from '../measure.ts';
import { cabinetByHand, material, type RunByHand, runByHand } from '../run-by-hand.ts';
import { measuresOf } from '../trades.ts';
import { filament } from './filament.ts';
import { worstDrag } from './pull.ts';

const C = 273.15;
const HAIR = 1e-6;
const spool = cabinetByHand.spools['left-ABS']!;
const machine = cabinetByHand.machines['left']!;

interface Changes {
  readonly spool?: Partial<SpoolPart>;
  readonly path?: Partial<SpoolPart['path']>;
  readonly drive?: Partial<Drive>;
  readonly material?: Partial<typeof material>;
}

function changed(changes: Changes): Cabinet {
  return {
    ...cabinetByHand,
    materials: { ABS: { ...material, ...changes.material } },
    machines: { left: { ...machine, drive: { ...machine.drive, ...changes.drive } } },
    spools: { 'left-ABS': { ...spool, ...changes.spool, path: { ...spool.path, ...changes.path } } },
  };
}

function measured(run: DayRun, quantity: string): Measure {
  const found = measuresOf(run, [filament]).filter((measure) => measure.quantity === quantity);
  expect(found).toHaveLength(1);
  return found[0]!;
}

const of = (quantity: string, changes: Changes = {}, told: RunByHand = {}): Measure =>
  measured(runByHand({ ...told, cabinet: changed(changes) }), quantity);
const verdict = ({ value, limit }: Measure): string => verdictOf(value, undefined, limit);

describe('the way from the spool', () => {
  it('exact: what unwinds and drags, times the factor of the bends', () => {
    const { value } = of('filament-pull', { path: { unwinding: 0.5, friction: 0.15, bends: Math.PI } });
    expect(value).toBeCloseTo((0.5 + worstDrag(spool)) * Math.exp(0.15 * Math.PI), 12);
  });

  it('cross: a plain rod drags about 1 N, ball bearings a thousandth of it, rollers a tenth', () => {
    const [rod, bearing, rollers] = (['rod', 'bearing', 'rollers'] as const).map((holder) =>
      worstDrag({ ...spool, holder }),
    );
    expect(rod).toBeGreaterThan(0.7);
    expect(rod).toBeLessThan(1.3);
    expect(bearing! / rod!).toBeLessThan(0.002);
    expect(rollers).toBeCloseTo(0.12, 1);
  });

  it('exact: the pull holds a hair below what the drive bears, fails a hair above; 5/3 of it for a moment', () => {
    for (const [quantity, share] of [
      ['filament-pull', 1],
      ['filament-start', 5 / 3],
    ] as const) {
      const value = of(quantity).value!;
      expect(verdict(of(quantity, { drive: { pull: (value / share) * (1 + HAIR) } }))).toBe('holds');
      expect(verdict(of(quantity, { drive: { pull: (value / share) * (1 - HAIR) } }))).toBe('fails');
    }
  });

  it('cross: two turns on printed guides jam, whatever the spool hangs on', () => {
    expect(verdict(of('filament-pull', { path: { bends: 4 * Math.PI, friction: 0.3, guide: 'printed' } }))).toBe(
      'fails',
    );
  });

  it('cross: a spool must spin freely on ball bearings (common practice): on a rod more than twice as many ways fail', () => {
    const bends = [0.5, 1, 1.5, 2, 2.5, 3].map((turns) => 2 * Math.PI * turns);
    const failing = (holder: SpoolPart['holder']): number =>
      bends.filter((angle) => verdict(of('filament-pull', { spool: { holder }, path: { bends: angle } })) === 'fails')
        .length;
    expect(failing('rod')).toBeGreaterThan(2 * failing('bearing'));
  });

  it('property: bearings, a tube and fewer bends are what is proposed, each where it changes something', () => {
    const says = (changes: Changes): string[] => of('filament-pull', changes).remedies.map(({ says: text }) => text);
    expect(says({ spool: { holder: 'rod' }, path: { guide: 'printed' } })).toHaveLength(4);
    expect(says({ path: { bends: 0.1 } })).toEqual([]);
  });
});

describe('the filament itself', () => {
  it('exact: the bend holds a hair above the radius that its strain asks for', () => {
    const radius = 0.00175 / (2 * material.bendStrain);
    expect(verdict(of('filament-bend', { path: { radius: radius * (1 + HAIR) } }))).toBe('holds');
    expect(verdict(of('filament-bend', { path: { radius: radius * (1 - HAIR) } }))).toBe('fails');
  });

  it('cross: soft filament bears 20 N in a gap of 5 mm and not in one of 10 mm', () => {
    const soft = { material: { elasticModulus: 30e6 } };
    expect(of('filament-push', { ...soft, drive: { gap: 0.01 } }).value).toBeCloseTo(5.45, 2);
    expect(verdict(of('filament-push', { ...soft, drive: { gap: 0.005 } }))).toBe('holds');
    expect(verdict(of('filament-push', { ...soft, drive: { gap: 0.01 } }))).toBe('fails');
    expect(of('filament-push', { ...soft, drive: { gap: 0.01 } }).remedies[0]!.edits[0]!.set).toEqual({
      'machines.left.drive.gap': '3.5 mm',
    });
  });

  it('property: stiff filament is not asked', () => {
    expect(measuresOf(runByHand(), [filament]).some(({ quantity }) => quantity === 'filament-push')).toBe(false);
  });

  it('property: no spool of the catalogue may hang warmer than 10 K below where a stiff polymer softens', () => {
    for (const kind of Object.keys(catalogueData['materials']!)) {
      const { 'spool-limit': bears, 'glass-transition': softens } = findPart(undefined, 'materials', kind)!.spec;
      if (softens!.value > C + 55) expect(bears!.value, kind).toBeLessThanOrEqual(softens!.value - 10);
    }
  });
});

describe('the air around the spool', () => {
  it('exact: its bay may be as warm as its material bears, at any one moment', () => {
    const at = (kelvin: number): string =>
      verdict(of('spool-air', {}, { temperatures: { lower: (t) => (t === 43_200 ? kelvin : C + 20) } }));
    expect(at(C + 55 - HAIR)).toBe('holds');
    expect(at(C + 55 + HAIR)).toBe('fails');
  });

  it('exact: outside counts the room, a drier what the file says of it', () => {
    const warmBay = { temperatures: { lower: C + 70 } };
    expect(verdict(of('spool-air', { spool: { where: 'outside' } }, warmBay))).toBe('holds');
    expect(of('spool-air', { spool: { temperature: C + 50 } }, warmBay).value).toBe(C + 50);
  });

  it('exact: a drier of which the file says nothing is unknown and says what to give', () => {
    const heats = { dry: { what: 'drier', bay: 'lower', watts: 20, control: { kind: 'always' }, water: 0 } } as const;
    const cabinet = { ...changed({ spool: { where: 'dry' } }), heats } as unknown as Cabinet;
    for (const quantity of ['spool-air', 'spool-humidity']) {
      const { value, missing } = measured(runByHand({ cabinet }), quantity);
      expect(value).toBeUndefined();
      expect(missing).toContain('spools.left-ABS.');
    }
  });

  it('cross: room air of 50 % is drier in a warm bay', () => {
    // The run by hand keeps the room's water in the bay: 21 °C and 50 % become about 18 % at 38 °C.
    expect(of('spool-humidity').value).toBeCloseTo(0.5, 2);
    expect(of('spool-humidity', {}, { temperatures: { lower: C + 38 } }).value).toBeCloseTo(0.19, 1);
  });

  it('exact: humidity holds a hair below what the material bears and fails a hair above', () => {
    const value = of('spool-humidity').value!;
    expect(verdict(of('spool-humidity', { material: { humidityLimit: value * (1 + HAIR) } }))).toBe('holds');
    expect(verdict(of('spool-humidity', { material: { humidityLimit: value * (1 - HAIR) } }))).toBe('fails');
  });

  it('exact: a spool as heavy as its jobs lasts; one a hair lighter does not', () => {
    expect(verdict(of('spool-rest', { spool: { mass: 0.1 } }))).toBe('holds');
    expect(verdict(of('spool-rest', { spool: { mass: 0.1 - HAIR } }))).toBe('fails');
  });

  it('property: a spool that nobody wrote down is asked only on days that print from it', () => {
    const idle = { ...cabinetByHand.days['usual']!, jobs: {} };
    const days = { usual: idle };
    const ask = (written: boolean): number =>
      filament.measure!(runByHand({ cabinet: { ...changed({ spool: { written } }), days } })).length;
    expect(ask(false)).toBe(0);
    expect(ask(true)).toBe(2);
  });
});
