// Which of the files that a person handed in is the one that a path means.

/** By its name: a browser does not tell from which folder a file was picked. */
export function handedIn(files: readonly File[], path: string): File | undefined {
  return files.find(({ name }) => name === path.split('/').at(-1));
}
