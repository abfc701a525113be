// Is there light while a watched machine prints?

import { causes } from '../causes.ts';
import { meanOf, within } from '../course.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { type Print, printsOf } from '../prints.ts';
import { courseOn } from '../switched.ts';
import { litWithJob } from './edits.ts';
import { litLimit } from './limits.ts';
import { litPrint } from './lit.ts';

export function litHours(run: DayRun): Measure[] {
  const { cabinet } = run;
  return Object.entries(cabinet.cameras).flatMap(([id, { looksAt }]) =>
    printsOf(run).flatMap((print) => (print.machineId === looksAt ? litDuring(run, id, print) : [])),
  );
}

/** Share of the job during which any lamp of its bay burns; a lamp in a chamber burns with its machine. */
function litDuring(run: DayRun, cameraId: string, print: Print): Measure[] {
  const { cabinet, assembly } = run;
  const { space } = litPrint(cabinet, print.machineId);
  const lamps = space.lamps.filter(({ id }) => cabinet.heats[id] !== undefined);
  if (lamps.length === 0) return [];
  const shares = lamps.map(({ id }) => {
    const source = assembly.network.heatSources.find(({ name }) => name === id);
    return source === undefined ? undefined : within(courseOn(run, source.active), print.start, print.end);
  });
  const known = shares.filter((course) => course !== undefined);
  if (known.length === 0) return [];
  const any = known[0]!.values.map((_, row) => Math.max(...known.map(({ values }) => values[row] ?? 0)));
  const value = meanOf({ times: known[0]!.times, values: any });
  return [
    {
      trade: 'light',
      quantity: 'lit-while-printing',
      part: `${cameraId}.${print.id}`,
      title: 'share of the print during which the camera has light',
      value,
      unit: 'share',
      limit: litLimit(cabinet),
      get steps(): readonly Step[] {
        return lamps.map(({ id }, at) => ({
          text: `${id} burns for so much of it`,
          value: shares[at] === undefined ? 0 : meanOf(shares[at]),
          unit: 'share',
          inputs: [`heats.${id}.control`],
        }));
      },
      get remedies(): readonly Remedy[] {
        return litWithJob(
          lamps.map(({ id }) => id),
          print.machineId,
        );
      },
      cause: causes.noLight,
      weight: 0.3,
      better: 'higher',
    },
  ];
}
