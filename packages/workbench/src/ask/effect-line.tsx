// What a fault, or a worn part, does to one finding.

import { type Effect, formatClock, type UnitSystem } from '@stillair/engine';
import { bandText, limitText, placeText, valueText } from '../remarks/finding-text.ts';
import { VerdictMark, verdictWord } from '../remarks/verdict-mark.tsx';

export function EffectLine({
  effect,
  units,
  days,
}: {
  readonly effect: Effect;
  readonly units: UnitSystem;
  readonly days: number;
}) {
  const { title, unit, p10, p90, limit, part, day, verdict, was, passed } = effect;
  const band = p10 === undefined || p90 === undefined ? '' : bandText({ p10, p90, unit }, units);
  return (
    <p className={`effect ${verdict}`}>
      <VerdictMark verdict={verdict} />
      <span className="word">
        {verdictWord[verdict]}
        {was === 'fails' ? ' the more' : ''}
      </span>{' '}
      {title}, {placeText({ part, day }, days)}: <strong>{valueText(effect, units)}</strong>
      {band === '' ? '' : ` (${band})`}
      <span className="limits" title={limit.source}>
        {' '}
        {limitText({ limit, unit }, units)}
        {passed === undefined ? '' : `, passed at ${formatClock(passed)}`}
      </span>
    </p>
  );
}
