// What the study of care is given: the date, which the person's clock says, and the diary that they picked.

import { type CareOptions, parseDate, type ReadSource, readDiary } from '@stillair/engine';
import type { Unreadable, Wishes } from './protocol.ts';

export async function careBy(
  { cabinet }: ReadSource,
  { today = '', file }: Wishes,
): Promise<Pick<CareOptions, 'today' | 'diary'> | Unreadable> {
  const day = parseDate(today);
  if (typeof day !== 'number') throw new Error(`the date is not understood: ${day.what}`);
  if (file === undefined) return { today: day };
  const answer = readDiary(file.name, await file.text(), cabinet, day);
  return answer.ok ? { today: day, diary: answer.diary } : { unreadable: file.name, complaints: answer.complaints };
}
