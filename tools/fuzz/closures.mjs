// How well the balances of a day close, as a share of what moved. Where nothing moves at all, rounding alone would be
// compared with rounding: a vapour then closes against what the air held, air against a trickle, heat against a little.

/** kg/s: 0.03 m³/h. Pressures of tens of pascals round at 1e-14 Pa, which a wide opening turns into 1e-14 kg/s. */
const A_TRICKLE = 1e-5;
/** J: what warms the air of a bay by about a kelvin. */
const A_LITTLE_HEAT = 1000;

export function closuresOf(record) {
  const { heat, contaminants } = record.ledger;
  return {
    heat: heatClosure(heat),
    air: airClosure(record),
    contaminant: contaminants.reduce((most, book) => Math.max(most, contaminantClosure(record, book)), 0),
  };
}

function heatClosure({ stored, sources, beds, conducted, carriedByAir }) {
  const miss = stored - sources - beds + conducted + carriedByAir;
  return Math.abs(miss) / Math.max(A_LITTLE_HEAT, sources + beds + Math.abs(conducted) + Math.abs(carriedByAir));
}

function contaminantClosure({ network, concentrations }, book) {
  const { contaminant, stored, emitted, deposited, coagulated = 0, filtered, toBoundary } = book;
  const miss = stored - emitted + deposited + coagulated + filtered + toBoundary;
  const { names, values } = concentrations[contaminant];
  const held = network.zones
    .filter((zone) => zone.concentrations === 'free')
    .reduce((sum, zone) => sum + zone.volume * Math.abs(values[names.indexOf(zone.name)]), 0);
  const moved = emitted + Math.abs(deposited) + Math.abs(coagulated) + Math.abs(filtered) + Math.abs(toBoundary);
  return miss === 0 ? 0 : Math.abs(miss) / (moved + held);
}

/** Largest net flow into a zone of solved pressure, at any row, as a share of the largest flow of that row. */
function airClosure({ network, flows: { names, values }, times }) {
  const solved = new Map(
    network.zones.filter(({ pressure }) => pressure.kind === 'solved').map(({ name }, index) => [name, index]),
  );
  const ends = names.map((name) => {
    const { from, to } = network.paths.find((path) => path.name === name);
    return [solved.get(from) ?? -1, solved.get(to) ?? -1];
  });
  const net = new Float64Array(solved.size);
  let worst = 0;
  for (let row = 0; row < times.length; row += 1) {
    net.fill(0);
    let largest = A_TRICKLE;
    ends.forEach(([from, to], column) => {
      const flow = values[row * names.length + column];
      largest = Math.max(largest, Math.abs(flow));
      if (from >= 0) net[from] -= flow;
      if (to >= 0) net[to] += flow;
    });
    worst = net.reduce((most, amount) => Math.max(most, Math.abs(amount) / largest), worst);
  }
  return worst;
}
