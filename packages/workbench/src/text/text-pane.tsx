// The cabinet file as text: it stays the truth. Completion and hover help from the published schema, faults under the very words.

import { autocompletion, type CompletionContext, type CompletionResult, closeBrackets } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap, indentWithTab } from '@codemirror/commands';
import { yaml } from '@codemirror/lang-yaml';
import { bracketMatching, HighlightStyle, indentOnInput, syntaxHighlighting } from '@codemirror/language';
import { type Diagnostic, lintGutter, setDiagnostics } from '@codemirror/lint';
import { EditorState } from '@codemirror/state';
import {
  drawSelection,
  EditorView,
  highlightActiveLine,
  hoverTooltip,
  keymap,
  lineNumbers,
  type Tooltip,
} from '@codemirror/view';
import { tags } from '@lezer/highlight';
import type { Complaint } from '@stillair/engine';
import { useEffect, useRef } from 'preact/compat';
import type { Vocabulary } from '../engine/protocol.ts';
import { placeInText } from './place-in-text.ts';
import { keysAt, meaningAt, wordsAt } from './schema-at.ts';

export interface TextPaneProps {
  readonly text: string;
  readonly complaints: readonly Complaint[];
  readonly vocabulary: Vocabulary | undefined;
  /** A line to bring into view, from 1. */
  readonly line?: number | undefined;
  readonly onText: (text: string) => void;
}

export default function TextPane({ text, complaints, vocabulary, line, onText }: TextPaneProps) {
  const host = useRef<HTMLDivElement>(null);
  const view = useRef<EditorView | undefined>(undefined);
  const known = useRef({ vocabulary, onText });
  known.current = { vocabulary, onText };

  // biome-ignore lint/correctness/useExhaustiveDependencies: the editor is made once; later texts reach it below.
  useEffect(() => {
    const editor = new EditorView({
      parent: host.current!,
      state: EditorState.create({ doc: text, extensions: extensions(() => known.current) }),
    });
    // A stretch that scrolls must be reachable by keyboard; its content is, but not every checker sees that.
    editor.scrollDOM.tabIndex = 0;
    view.current = editor;
    return () => editor.destroy();
  }, []);

  useEffect(() => {
    const editor = view.current;
    if (editor === undefined) return;
    const before = editor.state.doc.toString();
    if (before !== text) editor.dispatch({ changes: smallestChange(before, text), annotations: [] });
  }, [text]);

  useEffect(() => {
    const editor = view.current;
    if (editor !== undefined)
      editor.dispatch(
        setDiagnostics(
          editor.state,
          complaints.map((each) => diagnosticOf(editor.state, each)),
        ),
      );
  }, [complaints]);

  useEffect(() => {
    const editor = view.current;
    if (editor === undefined || line === undefined) return;
    const at = editor.state.doc.line(Math.min(line, editor.state.doc.lines)).from;
    editor.dispatch({ selection: { anchor: at }, effects: EditorView.scrollIntoView(at, { y: 'center' }) });
  }, [line]);

  return <div className="text-editor" ref={host} />;
}

interface Known {
  readonly vocabulary: Vocabulary | undefined;
  readonly onText: (text: string) => void;
}

const ink = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], fontWeight: '600' },
  { tag: tags.comment, fontStyle: 'italic', color: 'var(--faint)' },
  { tag: [tags.separator, tags.punctuation, tags.brace, tags.squareBracket], color: 'var(--faint)' },
]);

function extensions(known: () => Known) {
  return [
    lineNumbers(),
    history(),
    drawSelection(),
    indentOnInput(),
    bracketMatching(),
    closeBrackets(),
    highlightActiveLine(),
    lintGutter(),
    yaml(),
    syntaxHighlighting(ink),
    autocompletion({ override: [(context) => complete(context, known().vocabulary)], icons: false }),
    hoverTooltip((view, offset) => hover(view, offset, known().vocabulary)),
    ...styleNonce(),
    EditorView.contentAttributes.of({ 'aria-label': 'text of the cabinet file' }),
    keymap.of([...defaultKeymap, ...historyKeymap, indentWithTab]),
    EditorView.updateListener.of((update) => {
      // What the page itself puts in is known already; what a person types is not.
      if (
        update.docChanged &&
        update.transactions.some(
          (transaction) =>
            transaction.isUserEvent('input') ||
            transaction.isUserEvent('delete') ||
            transaction.isUserEvent('undo') ||
            transaction.isUserEvent('redo') ||
            transaction.isUserEvent('move'),
        )
      )
        known().onText(update.state.doc.toString());
    }),
  ];
}

/** The server's policy lets in only styles that carry its mark. */
function styleNonce() {
  const nonce = document.querySelector<HTMLMetaElement>('meta[name="style-nonce"]')?.nonce;
  return nonce === undefined || nonce === '' ? [] : [EditorView.cspNonce.of(nonce)];
}

function complete(context: CompletionContext, vocabulary: Vocabulary | undefined): CompletionResult | null {
  if (vocabulary === undefined) return null;
  const text = context.state.doc.toString();
  const { path, key, word, from } = placeInText(text, context.pos);
  if (word === '' && !context.explicit) return null;
  if (key !== undefined) {
    const at = [...path, key];
    const options = [...wordsAt(vocabulary.schema, at), ...namesFor(vocabulary, path, key)].map((label) => ({ label }));
    return options.length === 0 ? null : { from, options, validFor: /^[\w .%-]*$/ };
  }
  const keys = [...keysAt(vocabulary.schema, path)].map(([label, detail]) => ({
    label,
    apply: `${label}: `,
    info: detail,
  }));
  const words = [...wordsAt(vocabulary.schema, path), ...namesFor(vocabulary, path, '')].map((label) => ({ label }));
  const options = [...keys, ...words];
  return options.length === 0 ? null : { from, options, validFor: /^[\w .-]*$/ };
}

/** Names of the catalogue and of the file that fit at a key. */
function namesFor({ names }: Vocabulary, path: readonly string[], key: string): readonly string[] {
  const group = path[0] ?? '';
  const asked = key === 'kind' || key === '' ? `${group}.${key === '' ? (path.at(-2) ?? '') : 'kind'}` : key;
  return names[asked] ?? names[key] ?? [];
}

function hover(view: EditorView, offset: number, vocabulary: Vocabulary | undefined): Tooltip | null {
  if (vocabulary === undefined) return null;
  const line = view.state.doc.lineAt(offset);
  const end = /^[^\s:#{}[\],]*/.exec(view.state.sliceDoc(offset, line.to))![0].length + offset;
  const { path, key, word } = placeInText(view.state.doc.toString(), end);
  const meaning = meaningAt(vocabulary.schema, [...path, key ?? word]);
  if (meaning === '') return null;
  return {
    pos: offset,
    create: () => {
      const dom = document.createElement('div');
      dom.className = 'meaning';
      dom.textContent = meaning;
      return { dom };
    },
  };
}

function diagnosticOf({ doc }: EditorState, { where, what, allowed, mend }: Complaint): Diagnostic {
  const line = doc.line(Math.min(Math.max(1, where.line), doc.lines));
  const from = Math.min(line.from + where.column - 1, line.to);
  return {
    from,
    to: Math.min(line.to, from + where.length),
    severity: 'error',
    message: `${what}\nAllowed: ${allowed}\nTo mend: ${mend}`,
  };
}

/** Only what differs is replaced, so that the cursor stays where it is. */
function smallestChange(before: string, after: string): { from: number; to: number; insert: string } {
  let from = 0;
  while (from < before.length && from < after.length && before[from] === after[from]) from++;
  let [to, end] = [before.length, after.length];
  while (to > from && end > from && before[to - 1] === after[end - 1]) {
    to--;
    end--;
  }
  return { from, to, insert: after.slice(from, end) };
}
