// What is free, said on a command line: `air.in.hole=[60 mm round, 80 mm round]`, written into the file's text under `search:`.

import { joinPath } from '../../cabinet/edit-path.ts';
import { editText } from '../../cabinet/edits.ts';
import { readYaml } from '../../cabinet/yaml-document.ts';

/** The text with what is free, or what is wrong with the words. */
export function withFree(
  text: string,
  words: readonly string[],
): { readonly text: string } | { readonly problem: string } {
  let now = text;
  for (const word of words) {
    const at = word.indexOf('=');
    const path = word.slice(0, Math.max(at, 0)).trim();
    const value = at < 0 ? undefined : valueIn(word.slice(at + 1));
    if (path === '' || typeof value !== 'object' || value === null)
      return {
        problem: `"${word}" does not say what may change; write a path, an equals sign and values, such as "air.in.hole=[60 mm round, 80 mm round]"`,
      };
    try {
      now = editText(now, [{ set: { [joinPath(['search', 'free', path])]: value } }]);
    } catch (error) {
      return { problem: error instanceof Error ? error.message : String(error) };
    }
  }
  return { text: now };
}

function valueIn(written: string): unknown {
  const read = readYaml('values', `values: ${written}`);
  return 'complaints' in read ? undefined : (read.document.toJS() as { readonly values: unknown }).values;
}
