// Names of files made of ids: whatever a person calls a part, the file can be written on every machine.

/**
 * Letters, digits, `.`, `_` and `-` stay; every other run of signs becomes one `-`.
 *
 * @example An id with blanks and a letter of another alphabet
 * ```ts
 * fileName('Lüfter 1/oben'); // => L-fter-1-oben
 * fileName('…'); // => part
 * ```
 */
export function fileName(id: string): string {
  const plain = id.replaceAll(/[^A-Za-z0-9._-]+/g, '-').replaceAll(/^[.-]+|-+$/g, '');
  return plain === '' ? 'part' : plain;
}

/** The same, and each of a list its own. */
export function fileNames(ids: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return ids.map((id) => {
    const plain = fileName(id);
    let name = plain;
    for (let number = 2; taken.has(name.toLowerCase()); number += 1) name = `${plain}-${number}`;
    taken.add(name.toLowerCase());
    return name;
  });
}
