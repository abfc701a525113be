// A value against its limit, with its spread, on a small scale of its own.

import { type BriefFinding, formatQuantity, type KindName, type UnitSystem } from '@stillair/engine';

const WIDTH = 200;
const PAD = 8;

/** What of a finding is drawn. */
type Drawn = Pick<BriefFinding, 'value' | 'limit' | 'p10' | 'p90' | 'logarithmic' | 'unit'>;

export function SpreadBar({
  finding,
  units,
  pending,
}: {
  readonly finding: Drawn;
  readonly units: UnitSystem;
  readonly pending: boolean;
}) {
  const { value, limit, p10, p90, logarithmic, unit } = finding;
  if (value === undefined || limit === undefined) return null;
  const known = [value, limit.value, p10, p90].filter((each): each is number => each !== undefined);
  const decades = logarithmic === true && known.every((each) => each > 0);
  const onScale = (number: number): number => (decades ? Math.log(number) : number);
  const least = Math.min(...known.map(onScale));
  const most = Math.max(...known.map(onScale));
  const room = Math.max((most - least) * 0.12, 1e-9 * Math.abs(most), 1e-12);
  const at = (number: number): number =>
    PAD + ((onScale(number) - least + room) / (most - least + 2 * room)) * (WIDTH - 2 * PAD);
  const line = at(limit.value);
  const beyond = limit.kind === 'at-most' ? { x: line, width: WIDTH - line } : { x: 0, width: line };
  const show = (number: number): string => formatQuantity(unit as KindName, number, units);
  const side = line > WIDTH / 2 ? 'end' : 'start';
  return (
    <svg className="spread-bar" viewBox={`0 0 ${WIDTH} 34`} role="img" aria-label={describe(finding, show)}>
      <rect className="beyond" x={beyond.x} y="4" width={beyond.width} height="14" />
      <path className="axis" d={`M0 11H${WIDTH}`} />
      {p10 !== undefined && p90 !== undefined && p10 !== p90 && !pending && (
        <rect className="band" x={at(p10)} y="7" width={Math.max(1.5, at(p90) - at(p10))} height="8" />
      )}
      <path className="limit" d={`M${line} 1V21`} />
      <circle className="value" cx={at(value)} cy="11" r="3.5" />
      <text className="limit-text" x={side === 'end' ? line - 3 : line + 3} y="31" textAnchor={side}>
        {limit.kind === 'at-most' ? 'at most ' : 'at least '}
        {show(limit.value)}
      </text>
    </svg>
  );
}

function describe({ value, p10, p90, limit }: Drawn, show: (number: number) => string): string {
  const band = p10 === undefined || p90 === undefined ? '' : `, ten to ninety per cent ${show(p10)} to ${show(p90)}`;
  return `${show(value!)}${band}, limit ${limit!.kind === 'at-most' ? 'at most' : 'at least'} ${show(limit!.value)}`;
}
