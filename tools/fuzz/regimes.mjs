// Which situations a simulated day passed through: a fuzz that never meets them proves nothing about them.

const HALF_HOUR = 1800;
/** kg/s, about 0.03 m³/h: below it a flow has no direction worth the name. */
const A_FLOW = 1e-5;
/** Pa above the room at the same height. */
const OVER = 0.2;

/** Every situation that is counted, and what it means. */
export const regimes = {
  reversal: 'a path whose air turned round during the day',
  sealed: 'a bay from which no way leads out',
  stall: 'a fan with several operating points',
  starved: 'a running fan below 30 % of its free delivery at that speed',
  events: 'more than 100 events',
  backFlow: 'air going backwards through a stopped fan',
  bedAtLimit: 'a bed at its full power for half an hour on end',
  overPressure: 'a bay more than 0.2 Pa above the room at the same height',
};

/** Names of the situations that the day met. */
export function regimesOf({ bays }, record) {
  const { network } = record;
  const met = {
    reversal: () => reverses(record),
    sealed: () =>
      hasSealed(
        network,
        Object.values(bays).flatMap(({ zones }) => zones),
      ),
    stall: () => record.warnings.some(({ code }) => code === 'several-operating-points'),
    starved: () => fanRows(record).some(({ speed, flow, free }) => speed > 0 && flow < 0.3 * speed * free),
    events: () => record.events.length > 100,
    backFlow: () => fanRows(record).some(({ speed, flow }) => speed === 0 && flow * 1.2 < -A_FLOW),
    bedAtLimit: () => bedAtLimit(record),
    overPressure: () =>
      overPressure(
        record,
        Object.values(bays).flatMap(({ zones }) => zones),
      ),
  };
  return Object.keys(regimes).filter((name) => met[name]());
}

function columnOf({ names, values }, name, row) {
  return values[row * names.length + names.indexOf(name)];
}

function reverses({ flows: { names, values } }) {
  return names.some((_, column) => {
    let [least, most] = [0, 0];
    for (let at = column; at < values.length; at += names.length) {
      least = Math.min(least, values[at]);
      most = Math.max(most, values[at]);
    }
    return least < -A_FLOW && most > A_FLOW;
  });
}

/** Zones that no path but an opened door joins to a held pressure. */
function hasSealed(network, zones) {
  const reached = new Set(network.zones.filter(({ pressure }) => pressure.kind === 'fixed').map(({ name }) => name));
  const ways = network.paths.filter(({ type, open }) => type !== 'fixed-flow' && open === 'always');
  for (let grown = true; grown; ) {
    grown = false;
    for (const { from, to } of ways) {
      if (reached.has(from) === reached.has(to)) continue;
      reached.add(from).add(to);
      grown = true;
    }
  }
  return zones.some((zone) => !reached.has(zone));
}

/** Speed, flow and free delivery (m³/s) of every fan that stands alone in its path, at every row. */
function fanRows(record) {
  const { network, times, flows, fanSpeeds, temperatures } = record;
  const { atmosphere, gasConstant } = network.constants;
  return network.paths.flatMap((path) => {
    if (path.type !== 'fan-path' || path.fans.length !== 1) return [];
    const [{ name, curve }] = path.fans;
    const free = freeDelivery(curve);
    return Array.from(times, (_, row) => {
      const mass = columnOf(flows, path.name, row);
      const kelvin = columnOf(temperatures, mass >= 0 ? path.from : path.to, row);
      const density = atmosphere / (gasConstant * kelvin);
      return { speed: columnOf(fanSpeeds, name, row), flow: mass / density, free };
    });
  });
}

function freeDelivery(curve) {
  if (curve.kind === 'poly') {
    return curve.b === 0
      ? curve.p0 / curve.a
      : (Math.sqrt(curve.a ** 2 + 4 * curve.b * curve.p0) - curve.a) / (2 * curve.b);
  }
  return curve.points.at(-1)[0];
}

function bedAtLimit({ network, times, bedPowers }) {
  return network.machines.some(({ name, bed }) => {
    if (bed === undefined) return false;
    let since;
    return times.some((time, row) => {
      if (columnOf(bedPowers, name, row) < 0.999 * bed.powerMax) since = undefined;
      else since ??= time;
      return since !== undefined && time - since >= HALF_HOUR;
    });
  });
}

function overPressure({ network, times, pressures, temperatures }, zones) {
  const { gravity, atmosphere, gasConstant } = network.constants;
  const room = network.zones.find(({ name }) => name === 'room');
  return zones.some((zone) => {
    const { zRef } = network.zones.find(({ name }) => name === zone);
    return times.some((_, row) => {
      const density = atmosphere / (gasConstant * columnOf(temperatures, 'room', row));
      const outside = room.pressure.value - density * gravity * (zRef - room.zRef);
      return columnOf(pressures, zone, row) - outside > OVER;
    });
  });
}
