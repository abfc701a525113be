/** Straight lines between points [time s, value]; constant before the first and after the last point. */
export type Profile = readonly (readonly [time: number, value: number])[];
