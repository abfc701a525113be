// What was typed and not saved outlives a reload: kept in this browser under the name of its file.

interface Draft {
  readonly name: string;
  readonly text: string;
  /** The text it was changed from. */
  readonly saved: string;
}

const KEY = 'stillair draft';
const WISHES = 'stillair wishes';

export function keepDraft(draft: Draft): void {
  try {
    if (draft.text === draft.saved) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, JSON.stringify(draft));
  } catch {
    // A browser that keeps nothing (private windows) still lets people work.
  }
}

export function keptDraft(): Draft | undefined {
  return kept<Draft>(KEY);
}

/** How the person likes to look at it. */
export interface Wishes {
  readonly units: 'metric' | 'imperial';
  readonly theme: 'light' | 'dark' | 'system';
}

export function keepWishes(wishes: Wishes): void {
  try {
    localStorage.setItem(WISHES, JSON.stringify(wishes));
  } catch {
    // As above.
  }
}

export function keptWishes(): Partial<Wishes> {
  return kept<Wishes>(WISHES) ?? {};
}

function kept<Value>(key: string): Value | undefined {
  try {
    const text = localStorage.getItem(key);
    return text === null ? undefined : (JSON.parse(text) as Value);
  } catch {
    return undefined;
  }
}
