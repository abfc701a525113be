// Refusals of nonsense arguments. A value merely outside a formula's shown range is not nonsense: it is computed all the same.

/** Throws unless the value is a finite number. */
export function mustBeFinite(where: string, name: string, value: number): void {
  if (!Number.isFinite(value)) refuse(where, name, value, 'it must be a finite number');
}

/** Throws unless the value is a finite number above 0. */
export function mustBePositive(where: string, name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) refuse(where, name, value, 'it must be above 0');
}

/** Throws unless the value is a finite number, 0 or more. */
export function mustNotBeNegative(where: string, name: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) refuse(where, name, value, 'it must be 0 or more');
}

/** Throws unless low ≤ value ≤ high. */
export function mustLieWithin(where: string, name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) refuse(where, name, value, `it must lie between ${low} and ${high}`);
}

function refuse(where: string, name: string, value: number, rule: string): never {
  throw new RangeError(`${where}: ${name} is ${value}; ${rule}`);
}
