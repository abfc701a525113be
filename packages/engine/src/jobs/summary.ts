// From what a job file has done to what is told of it.

import { formatDuration } from '../units/format.ts';
import { heaterName, heldLongest, setTo } from './heat-course.ts';
import type { Extents, JobSummary, Span } from './job.ts';
import type { JobState } from './job-state.ts';
import { SUM, stop } from './move-queue.ts';

/** Words that are listed; further ones are counted together. */
const MOST_LISTED = 12;

export function summary(state: JobState, bytes: number): JobSummary {
  stop(state.queue);
  const { queue, heat, dwell } = state;
  const sums = queue.sums;
  const moving = sums[SUM.printing]! + sums[SUM.travelling]! + sums[SUM.filament]!;
  const now = sums[SUM.clock]!;
  const filament = [...state.mostFed].flatMap((length, tool) => (length > 0 ? [{ tool, length }] : []));
  const most = filament.reduce((best, each) => (each.length > (best?.length ?? 0) ? each : best), filament[0]);
  const nozzle = heldLongest(heat, heaterName('nozzle', most?.tool ?? state.tool), now);
  const bed = heldLongest(heat, 'bed', now);
  const chamber = heldLongest(heat, 'chamber', now);
  const words = [...state.unknown].map(([word, times]) => ({ word, times })).sort((a, b) => b.times - a.times);
  return {
    bytes,
    lines: state.line,
    moves: queue.added,
    duration: {
      estimate: moving + dwell,
      atSpeed: sums[SUM.atSpeed]! + dwell,
      stopAndGo: sums[SUM.stopAndGo]! + dwell,
      printing: sums[SUM.printing]!,
      travelling: sums[SUM.travelling]!,
      filament: sums[SUM.filament]!,
      dwell,
    },
    waits: {
      heat: state.heatWaits,
      homing: state.homing,
      pauses: state.pauses,
      toolChanges: state.toolChanges,
    },
    filament,
    extents: { all: extents(state.all), printed: extents(state.printed) },
    depth: { way: state.depthWay, reversals: state.reversals },
    fan: { mean: moving > 0 ? sums[SUM.fan]! / moving : 0, most: state.mostFan },
    setPoints: heat.listed,
    setPointsMore: heat.more,
    held: {
      ...(nozzle === undefined ? {} : { nozzle }),
      ...(bed === undefined ? {} : { bed }),
      ...(chamber === undefined ? {} : { chamber }),
    },
    unknown: words.slice(0, MOST_LISTED),
    unknownMore: words.slice(MOST_LISTED).reduce((sum, { times }) => sum + times, 0),
    notes: [...state.notes, ...lateNotes(state)],
  };
}

function extents(box: Float64Array): Extents {
  const span = (axis: number): Span | undefined =>
    box[axis]! <= box[axis + 1]! ? [box[axis]!, box[axis + 1]!] : undefined;
  const [x, y, z] = [span(0), span(2), span(4)];
  return { ...(x === undefined ? {} : { x }), ...(y === undefined ? {} : { y }), ...(z === undefined ? {} : { z }) };
}

function lateNotes({ rules, dwell, dwellsInP, heat }: JobState): string[] {
  const notes: string[] = [];
  if (dwellsInP > 0) {
    const other = rules.dwell === 'seconds' ? 'milliseconds, as most printers have it' : 'seconds, as RS-274 has it';
    notes.push(`P of its dwells (${dwellsInP}, ${formatDuration(dwell)} in all) counts ${rules.dwell}, not ${other}`);
  }
  const hot = [...heat.heaters.keys()].filter((name) => setTo(heat, name) > 0);
  if (hot.length > 0) notes.push(`left heated at its end: ${hot.join(', ')}; is the file whole?`);
  return notes;
}
