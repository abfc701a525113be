// A function that stays the same from one rendering to the next and does what the newest one does: what is given it, and nothing
// else that is new, need not be drawn again.

import { useCallback, useLayoutEffect, useRef } from 'preact/compat';

export function useSteady<Given extends readonly unknown[], Gives>(
  does: (...given: Given) => Gives,
): (...given: Given) => Gives {
  const newest = useRef(does);
  useLayoutEffect(() => {
    newest.current = does;
  });
  return useCallback((...given: Given) => newest.current(...given), []);
}
