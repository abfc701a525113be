// A text becomes a cabinet with its findings by middle values and its days to draw. Runs in the worker; knows no page.

import {
  assumedInputs,
  byItsValue,
  type DayRun,
  dayPanels,
  dayStrips,
  type Edit,
  measureDays,
  type Origin,
  type Origins,
  originText,
  readCabinet,
  runDay,
  sheetDay,
  type UnitSystem,
} from '@stillair/engine';
import { plain } from './plain.ts';
import type { Look, OriginTexts, ShownDay } from './protocol.ts';

/** Name under which the text stands in complaints: the page shows the place itself. */
const FILE = 'cabinet';

export function look(
  text: string,
  units: UnitSystem,
  edits: readonly Edit[] = [],
): Look | { readonly complaints: Extract<ReturnType<typeof readCabinet>, { ok: false }>['complaints'] } {
  const answer = readCabinet(FILE, text, edits);
  if (!answer.ok) return { complaints: answer.complaints };
  const { cabinet, origins } = answer;
  const runs: DayRun[] = [];
  const { measures, warnings } = measureDays(cabinet, undefined, (asked, day) => {
    const run = runDay(asked, day);
    runs.push(run);
    return run;
  });
  return {
    cabinet,
    findings: [...measures.values()].map((measure) => plain(byItsValue(measure))),
    days: runs.map(
      (run): ShownDay => ({
        sheet: sheetDay(run),
        strips: dayStrips(run),
        panels: dayPanels(run, { units }),
      }),
    ),
    origins: originTexts(origins),
    uncertain: assumedInputs(origins).map(({ path, label }) => ({ path, label, why: originWords(origins.get(path)) })),
    warnings,
  };
}

function originTexts(origins: Origins): OriginTexts {
  return Object.fromEntries([...origins].map(([path, origin]) => [path, originWords(origin)]));
}

export function originWords(origin: Origin | undefined): string {
  return originText(origin, ({ line }) => `line ${line}: `);
}
