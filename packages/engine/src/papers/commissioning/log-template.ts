// An empty log with a column for each sensor, in the words and units that a log is read with.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { csvCell } from '../csv-cell.ts';

export function logTemplate({ title, sensors, machines, bays }: Cabinet): string {
  const columns = [
    'time',
    ...(Object.keys(sensors).length > 0 ? Object.keys(sensors) : Object.keys(bays)).map((id) => `${id} [°C]`),
    'room [°C]',
    ...Object.keys(machines).map((id) => `${id} [W]`),
  ];
  return [
    `# ${title.replaceAll(/[\r\n]+/g, ' ')}: a row every 60 s or oftener, times as 2000-01-31 14:05:00; leave out columns that you have no sensor for.`,
    columns.map(csvCell).join(','),
    '',
  ].join('\n');
}
