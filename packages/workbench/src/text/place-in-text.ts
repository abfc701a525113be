// Where in the file a cursor stands: the keys above it, by indentation and, inside brackets, by nesting. Works on half-written
// text, where a parser would give up.

export interface PlaceInText {
  /** Keys from the left edge to the map that holds the cursor; lists count from 0. */
  readonly path: readonly string[];
  /** Key whose value the cursor stands in; absent where a key is being written. */
  readonly key?: string;
  /** Characters of the word so far. */
  readonly word: string;
  /** Offset at which that word begins. */
  readonly from: number;
}

const KEY = /^(\s*)((?:- +)*)([^\s:#{}[\],"'][^:#{}[\],]*?|"[^"]*"|'[^']*'):(?=\s|$)/;

export function placeInText(text: string, offset: number): PlaceInText {
  const lineStart = text.lastIndexOf('\n', offset - 1) + 1;
  const above = text.slice(0, lineStart).split('\n').slice(0, -1);
  const before = text.slice(lineStart, offset);
  const flow = flowPlace(before);
  const keyOfLine = KEY.exec(before);
  const indent = keyOfLine === null ? indentOf(before) : keyOfLine[1]!.length + keyOfLine[2]!.length;
  const path = blockPath(above, indent, before);
  const word = /[^\s{}[\],:]*(?: [^\s{}[\],:]+)*$/.exec(flow?.rest ?? afterKey(before, keyOfLine))?.[0] ?? '';
  const from = offset - word.length;
  if (flow !== undefined) {
    const outer = keyOfLine === null ? path : [...path, unquoted(keyOfLine[3]!)];
    const inner = [...outer, ...flow.path];
    return flow.key === undefined ? { path: inner, word, from } : { path: inner, key: flow.key, word, from };
  }
  if (keyOfLine !== null) return { path, key: unquoted(keyOfLine[3]!), word, from };
  return { path, word, from };
}

function afterKey(before: string, key: RegExpExecArray | null): string {
  return key === null ? before.replace(/^\s*(?:- )*/, '') : before.slice(key[0].length).trimStart();
}

/** Keys and list items that hold what stands at this column of the last line. */
function blockPath(above: readonly string[], column: number, last: string): string[] {
  const path: string[] = [];
  let within = column;
  let inItem = false;
  const lines = [...above, last];
  for (let at = lines.length - 1; at >= 0 && (within > 0 || inItem); at--) {
    for (const opener of openersOf(lines[at]!).reverse()) {
      // The key of a list may stand as far left as its dashes.
      const reach = opener.key !== undefined && inItem ? within + 1 : within;
      if (opener.column >= reach) continue;
      path.unshift(opener.key ?? String(itemsBefore(lines, at, opener.column)));
      within = opener.column;
      inItem = opener.key === undefined;
    }
  }
  return path;
}

interface Opener {
  readonly column: number;
  /** Absent for the dash of a list's item. */
  readonly key?: string;
}

function openersOf(line: string): Opener[] {
  if (/^\s*(?:#|$)/.test(line)) return [];
  const [, space = '', dashes = ''] = /^(\s*)((?:- +)*)/.exec(line)!;
  const items = [...dashes.matchAll(/- +/g)].map(({ index }) => ({ column: space.length + index }));
  const key = KEY.exec(line);
  return key === null ? items : [...items, { column: space.length + dashes.length, key: unquoted(key[3]!) }];
}

function itemsBefore(lines: readonly string[], at: number, column: number): number {
  let count = 0;
  for (let up = at - 1; up >= 0; up--) {
    const [first] = openersOf(lines[up]!);
    if (first === undefined || first.column > column) continue;
    if (first.column < column || first.key !== undefined) break;
    count++;
  }
  return count;
}

function indentOf(line: string): number {
  return /^\s*(?:- +)*/.exec(line)![0].length;
}

interface FlowPlace {
  readonly path: readonly string[];
  readonly key?: string;
  readonly rest: string;
}

/** The place inside brackets that are still open on this line. */
function flowPlace(before: string): FlowPlace | undefined {
  const stack: { key?: string; list: boolean; item: number; outer: string | undefined }[] = [];
  let key: string | undefined;
  let piece = '';
  for (const character of before) {
    if (character === '{' || character === '[') {
      stack.push({ list: character === '[', item: 0, outer: stack.length === 0 ? undefined : key });
      key = undefined;
      piece = '';
    } else if (character === '}' || character === ']') {
      const closed = stack.pop();
      key = closed?.outer;
      piece = '';
    } else if (stack.length > 0 && character === ',') {
      const top = stack.at(-1)!;
      if (top.list) top.item++;
      key = undefined;
      piece = '';
    } else if (stack.length > 0 && character === ':' && !stack.at(-1)!.list && key === undefined) {
      key = unquoted(piece.trim());
      piece = '';
    } else piece += character;
  }
  if (stack.length === 0) return undefined;
  const path = stack.flatMap(({ list, item, outer }) => [
    ...(outer === undefined ? [] : [outer]),
    ...(list ? [String(item)] : []),
  ]);
  return key === undefined ? { path, rest: piece.trimStart() } : { path, key, rest: piece.trimStart() };
}

function unquoted(text: string): string {
  return /^(["']).*\1$/.test(text) ? text.slice(1, -1) : text.trim();
}
