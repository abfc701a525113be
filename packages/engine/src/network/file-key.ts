// How a key of a network file may be spelled, and what its number is worth in SI.

export interface Spelling {
  /** Unit written behind the stem; empty where the key is no quantity. */
  readonly unit: string;
  /** The written number times `scale` plus `shift` is SI. */
  readonly scale: number;
  readonly shift: number;
  /** Names that are taken letter by letter; the first one is the name in the documentation. */
  readonly exact: readonly string[];
  /** Names with their unit, taken whatever their case and separators: `h_a_W_m2K`, `h_a_W_per_m2_K`. */
  readonly loose: readonly string[];
}

/** All spellings of one key, the documented one first. */
export type FileKey = readonly [Spelling, ...Spelling[]];
export type FileKeys<Name extends string = string> = Readonly<Record<Name, FileKey>>;

/** A key that is no quantity: `from`, `layers`. */
export function word(...names: [string, ...string[]]): FileKey {
  return [{ unit: '', scale: 1, shift: 0, exact: names, loose: [] }];
}

/**
 * A key with a unit: `quantity('m2', ['area', 'A'])` takes area_m2, area, A_m2 and A. Further units are taken only when written:
 * `{ mm: 1e-3 }`.
 */
export function quantity(
  unit: string,
  stems: readonly [string, ...string[]],
  others: Readonly<Record<string, number>> = {},
): FileKey {
  const [first, ...rest] = withUnit(unit, stems, others);
  return [{ ...first, exact: [...first.exact, ...stems] }, ...rest];
}

/** Like `quantity`, where the bare stem means something else: `T: fixed`, `T_C: 21`. */
export function withUnit(
  unit: string,
  stems: readonly [string, ...string[]],
  others: Readonly<Record<string, number>> = {},
): FileKey {
  const spelling = (name: string, scale: number, shift = 0): Spelling => {
    const exact = stems.map((stem) => (stem === '' ? name : `${stem}_${name}`));
    return { unit: name, scale, shift, exact, loose: exact.map(fold) };
  };
  const first = spelling(unit, 1, unit === 'C' ? 273.15 : 0);
  return [first, ...Object.entries(others).map(([name, scale]) => spelling(name, scale))];
}

/** The name under which the key is documented. */
export function documentedName(key: FileKey): string {
  return key[0].exact[0]!;
}

/** The spelling by which a written key is this one, if it is. */
export function spellingOf(key: FileKey, written: string): Spelling | undefined {
  return key.find(({ exact }) => exact.includes(written)) ?? key.find(({ loose }) => loose.includes(fold(written)));
}

function fold(name: string): string {
  return name.toLowerCase().replaceAll(/_per_|[^a-z0-9]/g, '');
}
