// Paths of edits: `air.exhaust.parts.0.fan`; an id with a dot stands in quotation marks: `room.background."PM2.5"`.

/**
 * The segments of a path; undefined when a quotation mark is not closed or a segment is empty.
 *
 * @example A plain path
 * ```ts
 * splitPath('bays.upper.z')?.length; // => 3
 * splitPath('room.background."PM2.5"')?.[2]; // => PM2.5
 * ```
 */
export function splitPath(path: string): string[] | undefined {
  const segments: string[] = [];
  let rest = path.trim();
  for (;;) {
    const match = /^(?:"([^"]+)"|([^."]+))(?:\.(?=.)|$)/.exec(rest);
    if (match === null) return undefined;
    segments.push((match[1] ?? match[2]!).trim());
    if (match[0].length === rest.length) return segments;
    rest = rest.slice(match[0].length);
  }
}

/** The path that `splitPath` reads back. */
export function joinPath(segments: readonly (string | number)[]): string {
  return segments.map((segment) => (String(segment).includes('.') ? `"${segment}"` : String(segment))).join('.');
}
