// Temperatures of a day's record at even times, in the order of the peers' states: zones, nodes, slices of walls.

export function stateNames(network) {
  return [
    ...network.zones.filter(({ temperature }) => temperature.kind === 'free').map(({ name }) => name),
    ...network.nodes.map(({ name }) => name),
    ...network.walls.flatMap(({ name, layers }) => {
      const slices = layers.reduce((sum, { nodes }) => sum + nodes, 0);
      return Array.from({ length: slices }, (_, index) => `${name}.${index + 1}`);
    }),
  ];
}

/** Cubic between the record's rows, written out here anew so that the engine's own reading of its record is not trusted. */
export function sampleRecord({ network, times, temperatures, slopes }, every) {
  const columns = stateNames(network).map((name) => temperatures.names.indexOf(name));
  const width = temperatures.names.length;
  const count = Math.floor(network.duration / every) + 1;
  const samples = new Float64Array(count * columns.length);
  let row = 0;
  for (let sample = 0; sample < count; sample += 1) {
    const time = sample * every;
    while (row + 2 < times.length && times[row + 1] < time) row += 1;
    const length = times[row + 1] - times[row];
    const u = length > 0 ? (time - times[row]) / length : 1;
    const [before, after] = [row * width, (row + 1) * width];
    columns.forEach((column, index) => {
      const [y0, y1] = [temperatures.values[before + column], temperatures.values[after + column]];
      const [s0, s1] = [slopes.values[before + column] * length, slopes.values[after + column] * length];
      const rise = y1 - y0;
      samples[sample * columns.length + index] =
        y0 + u * (s0 + u * (3 * rise - 2 * s0 - s1 + u * (s0 + s1 - 2 * rise)));
    });
  }
  return samples;
}

/** Highest value of a temperature: at a row, or where the cubic between two rows turns. */
export function highestOf({ times, temperatures, slopes }, name) {
  const width = temperatures.names.length;
  const column = temperatures.names.indexOf(name);
  let highest = temperatures.values[column];
  for (let row = 0; row + 1 < times.length; row += 1) {
    const length = times[row + 1] - times[row];
    const [before, after] = [row * width + column, (row + 1) * width + column];
    const [y0, y1] = [temperatures.values[before], temperatures.values[after]];
    const [s0, s1] = [slopes.values[before] * length, slopes.values[after] * length];
    highest = Math.max(highest, y1);
    if (!(length > 0 && s0 > 0 && s1 < 0)) continue;
    // y = y0 + u s0 + u2 b + u3 a; its slope s0 + 2 b u + 3 a u2 falls through zero between the rows.
    const a = s0 + s1 - 2 * (y1 - y0);
    const b = 3 * (y1 - y0) - 2 * s0 - s1;
    const u = (2 * s0) / (-2 * b + Math.sqrt(4 * b * b - 12 * a * s0));
    highest = Math.max(highest, y0 + u * (s0 + u * (b + u * a)));
  }
  return highest;
}
