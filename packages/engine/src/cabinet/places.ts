// Where air paths may begin and end.

/** Words that mean a place outside the cabinet, or an end of the file's own. */
export const RESERVED: readonly string[] = ['room', 'outdoors', 'any', 'cabinet', 'outside'];

export const OUTSIDE: readonly string[] = ['room', 'outdoors'];

/** The chamber of a machine, as an end of an air path. */
export function chamberOf(machine: string): string {
  return `${machine}.chamber`;
}
