// Which day the sheet shows, where the file has several.

import type { ShownDay } from '../engine/protocol.ts';

export function DayShown({
  days,
  shown,
  onDay,
}: {
  readonly days: readonly ShownDay[];
  readonly shown: number;
  readonly onDay: (at: number) => void;
}) {
  if (days.length < 2) return null;
  return (
    <select
      className="day-shown"
      aria-label="day"
      value={shown}
      onChange={(event) => onDay(Number(event.currentTarget.value))}
    >
      {days.map(({ sheet }, at) => (
        <option key={sheet.day} value={at}>
          {sheet.title}
        </option>
      ))}
    </select>
  );
}
