// Files without a server: examples come with the page, a file is opened from the computer and saved as a download.

import type { Store } from './store.ts';

/** The examples that the page is built with. */
const titles: Readonly<Record<string, string>> = {
  'tool-library.yaml': 'Tool library, reading room',
  'school-locker.yaml': 'School locker',
  'winter-shed.yaml': 'Winter shed',
};

export function browserStore(): Store {
  const openExample: Store['openExample'] = async (name) => {
    const answer = await fetch(`examples/${encodeURIComponent(name)}`);
    if (!answer.ok) throw new Error(`there is no example ${name}`);
    return { name, text: await answer.text() };
  };
  return {
    kind: 'browser',
    files: [],
    examples: Object.entries(titles).map(([name, title]) => ({ name, title })),
    writable: true,
    open: openExample,
    openExample,
    save: (name, content) => {
      download(name, new Blob([content], { type: 'application/yaml' }));
      return Promise.resolve({ ok: true });
    },
    watch: () => () => undefined,
  };
}

export function download(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A file that the person picks. */
export function pickFile(): Promise<{ readonly name: string; readonly text: string } | undefined> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.yaml,.yml,application/yaml,text/yaml';
    input.onchange = () => {
      const [file] = input.files ?? [];
      if (file === undefined) resolve(undefined);
      else void file.text().then((content) => resolve({ name: file.name, text: content }));
    };
    input.oncancel = () => resolve(undefined);
    input.click();
  });
}
