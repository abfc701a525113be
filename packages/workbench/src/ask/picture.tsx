// The picture of an answer. Where there is little room it keeps a size that can be read, and is moved sideways.

import { useMemo } from 'preact/compat';

export interface PictureProps {
  readonly svg: string;
  /** What is seen, in words. */
  readonly alt: string;
  /** Of a week: as wide as there is room. */
  readonly wide?: boolean;
}

export function Picture({ svg, alt, wide = false }: PictureProps) {
  const address = useMemo(() => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`, [svg]);
  return (
    <div className={wide ? 'paper week' : 'paper'} role="region" tabIndex={0} aria-label="picture">
      <img src={address} alt={alt} />
    </div>
  );
}
