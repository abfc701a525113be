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
