// The size of an element on the page, followed as it changes.

import { type RefObject, useLayoutEffect, useState } from 'preact/compat';

export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

export function useSize(element: RefObject<HTMLElement | null>, first: PixelSize): PixelSize {
  const [size, setSize] = useState(first);
  useLayoutEffect(() => {
    const node = element.current;
    if (node === null) return undefined;
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = node;
      if (width > 0 && height > 0)
        setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
