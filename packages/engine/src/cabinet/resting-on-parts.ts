// What rests on some parts of a cabinet is worked out again only when one of these parts is another.

interface Known<Answer> {
  readonly names: readonly string[];
  /** The parts that were read, as they were. */
  readonly rests: readonly (readonly [part: PropertyKey, was: unknown])[];
  readonly answer: Answer;
}

/** So many answers of one question are kept, the last used first. */
const MOST = 24;

/**
 * The same question, whose answer is found again for any cabinet in which the parts that it rests on (`bays`, `machines`, `paths` …) are
 * the same objects. Which these are need not be declared: they are those that were read when it was worked out, by questions inside it
 * as well.
 *
 * @param ask - Its answer must be whole when it is given: what a getter in it reads of the cabinet later is not seen.
 */
export function restingOnParts<Cabinet extends object, Names extends readonly string[], Answer>(
  ask: (cabinet: Cabinet, ...names: Names) => Answer,
): (cabinet: Cabinet, ...names: Names) => Answer {
  const known: Known<Answer>[] = [];
  return (cabinet, ...names) => {
    const at = known.findIndex((one) => isFor(one, cabinet, names));
    if (at > 0) known.unshift(...known.splice(at, 1));
    if (at >= 0) return known[0]!.answer;
    const rests = new Map<PropertyKey, unknown>();
    const answer = ask(watched(cabinet, rests), ...names);
    known.unshift({ names, rests: [...rests], answer });
    if (known.length > MOST) known.pop();
    return answer;
  };
}

/** Reads the parts as any question does: one that asks within another hands on what it rests on. */
function isFor({ names, rests }: Known<unknown>, cabinet: object, wanted: readonly string[]): boolean {
  if (names.some((name, at) => name !== wanted[at])) return false;
  return rests.every(([part, was]) => Reflect.get(cabinet, part) === was);
}

function watched<Cabinet extends object>(cabinet: Cabinet, rests: Map<PropertyKey, unknown>): Cabinet {
  const read = (part: PropertyKey): unknown => {
    const value: unknown = Reflect.get(cabinet, part);
    rests.set(part, value);
    return value;
  };
  return new Proxy(cabinet, {
    get: (_, part) => read(part),
    has: (_, part) => read(part) !== undefined,
    ownKeys: () => {
      throw new Error('restingOnParts: parts are asked for by name here, not listed');
    },
  });
}
