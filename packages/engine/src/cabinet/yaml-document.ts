// From the text of a file to a YAML tree with places, defended against every text that is not one.
// Nothing here throws, overflows the stack or takes long: size, depth and repetition are bounded before they cost.

import {
  Composer,
  type Document,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  LineCounter,
  type Node,
  Parser,
  type YAMLMap,
  type YAMLParseError,
} from 'yaml';
import { type Complaint, inFileOrder, type Span } from './complaint.ts';
import { readStructure } from './yaml-structure.ts';

/** Largest text that is read, in UTF-16 units; a cabinet file of a thousand lines has 50 thousand. */
const MAX_LENGTH = 2_000_000;
const MAX_DEPTH = 100;
/** More complaints than anybody reads about one text that is not YAML at all. */
const MAX_COMPLAINTS = 200;

/** A text that is one YAML document whose top is a map without duplicate keys, and whose aliases all lead somewhere. */
export interface YamlDocument {
  readonly file: string;
  readonly text: string;
  readonly document: Document.Parsed;
  readonly root: YAMLMap;
  /** First character of a node in the text, and the one behind it; nothing for what is not of the text. */
  readonly rangeOf: (node: Node) => readonly [number, number] | undefined;
  /** Where a node (or what an alias writes) stands. */
  readonly spanOf: (node: Node) => Span;
  /** The node itself, or the node that an alias stands for. */
  readonly resolve: (node: Node) => Node;
}

/** Reads YAML 1.2 text; returns the tree, or everything that is wrong with it in file order. */
export function readYaml(file: string, text: string): YamlDocument | { readonly complaints: readonly Complaint[] } {
  const unreadable = refuseUnread(file, text);
  if (unreadable !== undefined) return { complaints: [unreadable] };

  const span = placesIn(file, text);
  const rangeOf = ({ range }: Node): readonly [number, number] | undefined =>
    range === undefined || range === null ? undefined : [range[0], range[1]];
  const spanOf = (node: Node): Span => span(node.range?.[0] ?? 0, node.range?.[1] ?? 0);
  const parser = new Parser();
  const tokens = tokensOf(parser, text);
  if (tokens === undefined) return { complaints: [tooDeep(span(parser.offset, parser.offset + 1))] };

  // The composer's own test for keys that stand twice compares every pair of a map.
  const documents = [...new Composer({ uniqueKeys: false, prettyErrors: false }).compose(tokens, true, text.length)];
  const document = documents[0] as Document.Parsed;
  const complaints: Complaint[] = [...document.errors, ...document.warnings].map((error) =>
    syntaxComplaint(error, span),
  );
  const second = documents[1];
  if (second !== undefined) complaints.push(severalDocuments(span(second.range[0], second.range[0] + 3)));
  const { contents } = document;
  if (complaints.length === 0 && isEmpty(contents)) complaints.push(emptyFile(span(0, 0)));
  else if (complaints.length === 0 && !isMap(contents)) complaints.push(notAMap(contents, span(0, 1)));
  const structure = readStructure(contents, spanOf);
  if (complaints.length === 0 || isMap(contents)) complaints.push(...structure.complaints);
  if (complaints.length > 0) return { complaints: inFileOrder(complaints).slice(0, MAX_COMPLAINTS) };
  const resolve = (node: Node): Node => structure.targets.get(node) ?? node;
  return { file, text, document, root: contents as YAMLMap, rangeOf, spanOf, resolve };
}

/** What need not be parsed to be refused. */
function refuseUnread(file: string, text: string): Complaint | undefined {
  const where = (at: number): Span => {
    const before = text.lastIndexOf('\n', at - 1) + 1;
    const after = text.indexOf('\n', at);
    const line = at === 0 ? 1 : text.slice(0, at).split('\n').length;
    const lineText = text.slice(before, Math.min(after < 0 ? text.length : after, before + 1000));
    return { file, line, column: at - before + 1, length: 1, lineText };
  };
  if (text.length > MAX_LENGTH) {
    return {
      code: 'file-too-large',
      what: `the file has ${text.length} characters`,
      where: where(0),
      allowed: `a text of at most ${MAX_LENGTH} characters`,
      mend: 'take out what does not describe the cabinet; measurements belong in a log',
    };
  }
  const binary = text.search(/(?![\t\n\r])[\p{Cc}\ufffd]/u);
  if (binary >= 0) {
    return {
      code: 'not-text',
      what: `a character that is not text (code ${text.charCodeAt(binary)})`,
      where: where(binary),
      allowed: 'plain text in UTF-8',
      mend: 'save the file as plain text, or check that it is the right file',
    };
  }
  return undefined;
}

/** Tokens of the text, or undefined as soon as it nests too deeply (the composer is recursive, the parser is not). */
function tokensOf(
  parser: Parser,
  text: string,
): ReturnType<Parser['next']> extends Generator<infer T> ? T[] | undefined : never {
  const tokens = [];
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (parser.stack.length > MAX_DEPTH + 2) return undefined; // the document and the scalar at the end stand there too
  }
  for (const token of parser.end()) tokens.push(token);
  return tokens;
}

function tooDeep(where: Span): Complaint {
  return {
    code: 'nested-too-deeply',
    what: `more than ${MAX_DEPTH} lists and maps inside one another`,
    where,
    allowed: `at most ${MAX_DEPTH} levels`,
    mend: 'look for a bracket that is never closed',
  };
}

function severalDocuments(where: Span): Complaint {
  return {
    code: 'several-documents',
    what: 'a second document begins here',
    where,
    allowed: 'one document a file',
    mend: 'take out this "---" or put what follows into a file of its own',
  };
}

/** What to do about each fault that the parser names; its own words say what was wrong. */
const mending: Readonly<Record<string, readonly [code: string, allowed: string, mend: string]>> = {
  TAB_AS_INDENT: ['tab-as-indent', 'spaces before a key', 'replace the tab by two spaces'],
  BAD_INDENT: [
    'indent-wrong',
    'keys of one map begin in one column',
    'line this up with its neighbours, or close the bracket that is still open',
  ],
  MISSING_CHAR: [
    'yaml-wrong',
    'every bracket and quotation mark closed, a space after every colon',
    'add what is missing',
  ],
  TAG_RESOLVE_FAILED: [
    'tag-unknown',
    'plain values without a "!tag"',
    'take the tag out, or put the value in quotation marks',
  ],
};

function syntaxComplaint(
  error: YAMLParseError | Document.Parsed['warnings'][number],
  span: (from: number, to: number) => Span,
): Complaint {
  const [code, allowed, mend] = mending[error.code] ?? [
    'yaml-wrong',
    'YAML 1.2: `key: value` lines, lists with "- ", texts with special characters in quotation marks',
    'mend the line, or put the value in quotation marks',
  ];
  const what = error.message.charAt(0).toLowerCase() + error.message.slice(1, 300);
  return { code, what, where: span(error.pos[0], error.pos[1]), allowed, mend };
}

function isEmpty(contents: Node | null): boolean {
  return contents === null || (isScalar(contents) && contents.value === null);
}

function emptyFile(where: Span): Complaint {
  return {
    code: 'file-empty',
    what: 'there is nothing in this file',
    where,
    allowed: 'a YAML map of keys and values',
    mend: 'check that it is the right file',
  };
}

function notAMap(contents: Node | null, where: Span): Complaint {
  return {
    code: 'not-a-map',
    what: `the file is a ${isSeq(contents) ? 'list' : 'single value'}`,
    where,
    allowed: 'a YAML map: lines of `key: value` at the left edge',
    mend: 'check that it is the right file',
  };
}

/** Places of a text by its characters. */
export function placesIn(file: string, text: string): (from: number, to: number) => Span {
  const lines = lineCounter(text);
  return (from, to) => spanAt(file, text, lines, from, to);
}

function lineCounter(text: string): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1);
  return lines;
}

/** The part of `from`…`to` that lies on the line of `from`. */
function spanAt(file: string, text: string, lines: LineCounter, from: number, to: number): Span {
  const offset = Math.max(0, Math.min(from, text.length));
  const { line, col } = lines.linePos(offset);
  const start = offset - col + 1;
  const end = text.indexOf('\n', start);
  const lineText = text.slice(start, end < 0 ? text.length : end).replace(/\r$/, '');
  const length = Math.max(1, Math.min(to - offset, start + lineText.length - offset));
  return { file, line: Math.max(1, line), column: Math.max(1, col), length, lineText };
}
