// Leader lines from the remarks in the margin to the parts on the sheet that they are about.

import { useEffect, useLayoutEffect, useState } from 'preact/compat';

interface Leader {
  readonly id: string;
  readonly d: string;
  readonly x: number;
  readonly y: number;
  readonly strong: boolean;
}

export function Leaders({ opened, moved }: { readonly opened?: string | undefined; readonly moved: unknown }) {
  const [leaders, setLeaders] = useState<readonly Leader[]>([]);
  /** Counts how often there was another room for the sheet. */
  const [shape, reshape] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what has moved on the page is read from the page itself.
  useLayoutEffect(() => {
    const draw = (): void => setLeaders(leadersNow(opened));
    draw();
    const margin = document.querySelector('.remarks');
    margin?.addEventListener('scroll', draw, { passive: true });
    return () => margin?.removeEventListener('scroll', draw);
  }, [opened, moved, shape]);
  useEffect(() => {
    // The sheet is laid anew when its room changes, a moment after that is seen here.
    const room = new ResizeObserver(() => requestAnimationFrame(() => reshape((before) => before + 1)));
    for (const found of document.querySelectorAll('.drawing, .remarks')) room.observe(found);
    return () => room.disconnect();
  }, []);
  return (
    <svg className="leaders" aria-hidden="true">
      {leaders.map(({ id, d, x, y, strong }) => (
        <g key={id} className={strong ? 'leader strong' : 'leader'}>
          <path d={d} />
          <circle cx={x} cy={y} r={strong ? 4 : 2.5} />
        </g>
      ))}
    </svg>
  );
}

function leadersNow(opened: string | undefined): Leader[] {
  const sheet = document.querySelector('.sheet');
  const margin = document.querySelector('.remarks');
  if (sheet === null || margin === null) return [];
  const page = sheet.getBoundingClientRect();
  const room = margin.getBoundingClientRect();
  // On a narrow page the margin lies under the sheet, where lines would only confuse.
  if (room.left < page.right - 4) return [];
  return [...document.querySelectorAll<HTMLElement>('.remark[data-part-of]')].flatMap((remark) => {
    const part = sheet.querySelector(`[data-part="${CSS.escape(remark.dataset['partOf'] ?? '')}"]`);
    const from = remark.getBoundingClientRect();
    if (part === null || from.top < room.top - 4 || from.top > room.bottom - 16) return [];
    const to = part.getBoundingClientRect();
    const y0 = from.top + 14;
    const x0 = from.left - 2;
    const x1 = Math.min(to.right - Math.min(18, to.width / 3), page.right - 20);
    const y1 = to.top + Math.min(28, to.height / 2);
    const bend = page.right - 12;
    return [
      {
        id: remark.dataset['finding'] ?? '',
        d: `M${x0} ${y0}H${bend}L${x1} ${y1}`,
        x: x1,
        y: y1,
        strong: remark.dataset['finding'] === opened,
      },
    ];
  });
}
