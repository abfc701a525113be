// How long a joiner takes for a cabinet: a rule of thumb of the trade, and no law of nature.

/** What a joiner counts. */
export interface JoinersWork {
  readonly parts: number;
  /** Metres of joint. */
  readonly joints: number;
  readonly doors: number;
  readonly shelves: number;
}

/**
 * Hours of a joiner for a cabinet: h = 0.20 parts + 0.35 metres of joint + 0.5 doors + 0.25 shelves + 3.
 *
 * @param work - Numbers and metres, 0 or more.
 * @returns h. Real jobs lie between 0.75 and 1.5 of it: three bays take 10 to 18 h in single skin, 18 to 30 h in double.
 * @throws RangeError when a number is below 0.
 *
 * @remarks Valid: boards, one cabinet, an equipped workshop. Source: own rule of thumb. Checked: common practice, no source.
 *
 * @example Three bays in single skin: 9 parts, 12 m of joint, 3 doors, 2 shelves
 * ```ts
 * joinersHours({ parts: 9, joints: 12, doors: 3, shelves: 2 }); // => 11.0
 * ```
 */
export function joinersHours({ parts, joints, doors, shelves }: JoinersWork): number {
  for (const [name, value] of Object.entries({ parts, joints, doors, shelves }))
    if (!(value >= 0)) throw new RangeError(`joinersHours: ${name} is ${value}; it must not be below 0`);
  return 0.2 * parts + 0.35 * joints + 0.5 * doors + 0.25 * shelves + 3;
}
