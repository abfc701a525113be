// What can be read on the finished cabinet, with what, and how; in the order in which one goes round it.

export interface Reading {
  /** `trade/quantity` */
  readonly of: string;
  readonly tool: string;
  readonly how: string;
}

/** Tools and ways are common practice. */
export const readings: readonly Reading[] = [
  { of: 'fit/gap-front', tool: 'rule', how: 'machine at the ends of its travel, door shut' },
  { of: 'fit/gap-above', tool: 'rule', how: 'highest point of cable or tube, machine at its highest' },
  { of: 'structure/shelf-sag', tool: 'straight edge, feeler', how: 'loaded as in use' },
  { of: 'airflow/fan-flow', tool: 'vane anemometer in a pipe', how: 'doors shut, fan as it is set on this day' },
  {
    of: 'airflow/leak-pressure',
    tool: 'gauge to 1 Pa',
    how: 'hose through the highest gap, fans running, the other end in the room',
  },
  { of: 'draught/air-speed', tool: 'hot-wire anemometer', how: 'at the print, bed warm, no part fan' },
  { of: 'heat/peak-air', tool: 'thermometer, shaded', how: 'at the top of the bay, highest of the day' },
  { of: 'heat/print-air-high', tool: 'thermometer, shaded', how: 'beside the print, out of sight of the bed' },
  { of: 'heat/touch-temperature', tool: 'contact thermometer', how: 'hottest outer face, late in the day' },
  { of: 'heat/room-rise', tool: 'two thermometers', how: 'room with the cabinet at work, less a day without' },
  { of: 'sound/noise', tool: 'sound level meter, class 2', how: 'at the place, mean of the hours somebody is there' },
  { of: 'sound/quiet', tool: 'sound level meter, class 2', how: 'at the place, loudest ten minutes of these hours' },
  { of: 'light/print-light', tool: 'lux meter', how: 'flat on the bed, lamps on, room dark' },
  { of: 'power/circuit-load', tool: 'plug-in energy meter', how: 'highest of the day, all plugs of the cabinet' },
  { of: 'heat/energy-day', tool: 'plug-in energy meter', how: 'whole day' },
  { of: 'power/earth-leakage', tool: 'leakage clamp', how: 'by a qualified person' },
  {
    of: 'power/wire-drop',
    tool: 'multimeter',
    how: 'at both ends of the wire, everything on: difference over the first',
  },
  { of: 'filament/filament-start', tool: 'spring balance', how: 'pull the end of the filament before the drive' },
  { of: 'fire/smoke-in-bay', tool: 'test smoke', how: 'every detector answers' },
  {
    of: 'air-quality/room-particles-1h',
    tool: 'particle counter',
    how: 'mean of the worst hour, background told beside it',
  },
  { of: 'filament/spool-humidity', tool: 'hygrometer', how: 'beside the spool, mean of the day' },
];
