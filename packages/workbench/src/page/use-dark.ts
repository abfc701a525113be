// Light or dark paper: as the person wishes, else as their system does. The choice stands on the root for the style sheet.

import { useEffect, useSyncExternalStore } from 'preact/compat';
import type { Theme } from '../model/work.ts';

const query = '(prefers-color-scheme: dark)';

export function useDark(theme: Theme): boolean {
  const system = useSyncExternalStore(
    (changed) => {
      const media = matchMedia(query);
      media.addEventListener('change', changed);
      return () => media.removeEventListener('change', changed);
    },
    () => matchMedia(query).matches,
  );
  const dark = theme === 'system' ? system : theme === 'dark';
  useEffect(() => {
    document.documentElement.dataset['paper'] = dark ? 'dark' : 'light';
  }, [dark]);
  return dark;
}
