// The cabinet file refuses a fan curve with a dip, so that no file leads to several operating points. The solver must
// bear them all the same: here a dip is put into the network, around the flow at which the fan was found to run.

/** The network with one fan's curve rising through its operating point, or undefined where no fan lends itself. */
export function withDip({ network, fanSpeeds, flows, times }) {
  const path = network.paths.find(
    ({ type, fans, name }) =>
      type === 'fan-path' && fans.length === 1 && runsWell(fanSpeeds, flows, times, fans[0].name, name),
  );
  if (path === undefined) return undefined;
  const [fan] = path.fans;
  const { flow, speed } = largest(fanSpeeds, flows, times, fan.name, path.name);
  const here = flow / 1.2 / speed;
  const pressure = pressureAt(fan.curve, here);
  if (!(pressure > 0.2)) return undefined;
  const points = [
    [0, 1.6 * pressure],
    [0.6 * here, 0.3 * pressure],
    [1.2 * here, 1.6 * pressure],
    [1.8 * here, 0],
  ];
  const dipped = { ...path, fans: [{ ...fan, curve: { kind: 'points', points } }] };
  return { ...network, paths: network.paths.map((other) => (other === path ? dipped : other)) };
}

function runsWell(speeds, flows, times, fan, path) {
  return largest(speeds, flows, times, fan, path).flow > 5e-4;
}

function largest(speeds, flows, times, fan, path) {
  let best = { flow: 0, speed: 0 };
  for (let row = 0; row < times.length; row += 1) {
    const flow = flows.values[row * flows.names.length + flows.names.indexOf(path)];
    const speed = speeds.values[row * speeds.names.length + speeds.names.indexOf(fan)];
    if (speed > 0 && flow > best.flow) best = { flow, speed };
  }
  return best;
}

function pressureAt(curve, flow) {
  if (curve.kind === 'poly') return curve.p0 - curve.a * flow - curve.b * flow * Math.abs(flow);
  const next = curve.points.findIndex(([at]) => at >= flow);
  if (next <= 0) return next === 0 ? curve.points[0][1] : 0;
  const [[q0, p0], [q1, p1]] = curve.points.slice(next - 1, next + 1);
  return p0 + ((p1 - p0) * (flow - q0)) / (q1 - q0);
}
