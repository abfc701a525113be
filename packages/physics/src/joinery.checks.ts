import { skinPanels } from './box-panels.ts';
import { check, type OutsideCheck } from './outside-check.ts';
import { partsInLength, type SheetPart, sheetsFor } from './sheet-cutting.ts';

const TRAP = 'trap of the joiner’s trade: the kerf is lost between parts';

/** Length × width of ten pieces, by the OR-Library. */
const gcut1: readonly (readonly [number, number])[] = [
  [167, 184],
  [114, 118],
  [167, 152],
  [83, 140],
  [70, 86],
  [143, 166],
  [120, 160],
  [66, 148],
  [87, 141],
  [69, 165],
];

/** Best area that one guillotine pattern of unlimited copies can hold: an exact optimum that no plan may beat. */
const BEST = 58_136;

/** A plan of many copies: the fullest that the planner makes of any one kind, mm². */
function fullest(): number {
  return Math.max(
    ...gcut1.map(([length, width]) => {
      const many = Array<SheetPart>(60).fill({ length, width });
      const { planned } = sheetsFor(many, { length: 250, width: 250, trim: 0, kerf: 0, turned: true });
      return (60 / planned) * length * width;
    }),
  );
}

export const checks: readonly OutsideCheck[] = [
  check(
    'four parts of 610 out of 2440 with a kerf of 3.2 mm',
    'partsInLength',
    TRAP,
    'common practice, no source',
    3,
    '-',
    0,
    () => partsInLength(2.44, 0.61, 0.0032),
  ),
  check(
    'parts of 610 out of 2500 with a kerf of 3.2 mm',
    'partsInLength',
    TRAP,
    'common practice, no source',
    4,
    '-',
    0,
    () => partsInLength(2.5, 0.61, 0.0032),
  ),
  check(
    'pinwheel of five parts in 3 × 3, none turned: fits, but is no guillotine pattern',
    'sheetsFor',
    'definition of the guillotine cut, textbook counterexample',
    'second-hand',
    2,
    'sheets',
    0,
    () =>
      sheetsFor(
        [
          { length: 2, width: 1 },
          { length: 2, width: 1 },
          { length: 1, width: 2 },
          { length: 1, width: 2 },
          { length: 1, width: 1 },
        ],
        { length: 3, width: 3, trim: 0, kerf: 0, turned: false },
      ).planned,
  ),
  check(
    'gcut1: what the fullest plan lacks to the best pattern of all is never below 0, and at most a third',
    'sheetsFor',
    'Beasley, J. Opl Res. Soc. 36 (1985) 297, OR-Library; optimum 58 136 with turning, Cintra et al.',
    'read',
    BEST / 6,
    'mm²',
    BEST / 6,
    () => BEST - fullest(),
  ),
  check(
    'outer back of a double-skinned box',
    'skinPanels',
    'sizes by hand with the stated convention',
    'independent',
    808,
    'mm',
    1e-6,
    () => 1000 * skinPanels({ width: 0.6, depth: 0.6, height: 0.7 }, 0.042, 0.012)[4]!.width,
  ),
];
