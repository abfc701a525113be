// One look from the parts of the workers that shared it: what no day changes, then the days in the order of the file.

import type { DayLook, Look, LookPart } from './protocol.ts';

/** Nothing unless one of them took what no day changes, and each day was taken by one. */
export function wholeLook(parts: readonly LookPart[]): Look | undefined {
  const standing = parts.find((part) => part.standing !== undefined)?.standing;
  if (standing === undefined) return undefined;
  const byDay = new Map(parts.flatMap((part) => part.days.map((day) => [day.sheet.day, day] as const)));
  const days = Object.keys(standing.cabinet.days).map((id): DayLook | undefined => byDay.get(id));
  if (!days.every((day) => day !== undefined)) return undefined;
  return {
    cabinet: standing.cabinet,
    uncertain: standing.uncertain,
    findings: [...standing.findings, ...days.flatMap(({ findings }) => findings)],
    days: days.map(({ sheet }) => ({ sheet })),
    warnings: days.flatMap(({ sheet: { day }, warnings }) => warnings.map((message) => ({ day, message }))),
  };
}
