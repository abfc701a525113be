// An id for an option from what it says.

export function freshId(says: string, taken: readonly string[]): string {
  const stem = says
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 32);
  let id = stem;
  for (let count = 2; taken.includes(id); count++) id = `${stem}-${count}`;
  return id;
}
