// Networks of any size, to see how cost grows: bays in a row, each with its walls, leaks and fan, and machines in them.
// Every figure is invented.

const OFFICE = 294.15;
const HOUR = 3600;
const constants = {
  gravity: 9.80665,
  atmosphere: 101325,
  gasConstant: 287.055,
  heatCapacity: 1006,
  referenceDensity: 1.2,
  stefanBoltzmann: 5.670374419e-8,
};
const ply = { thickness: 0.018, conductivity: 0.13, density: 620, heatCapacity: 1600, nodes: 3 };

/**
 * `bays` bays in a row, each joined to the next by a hole, with `machines` machines spread over them.
 * `beds: false` leaves the beds out, so that the number of events does not grow with the number of machines.
 */
export function manyBays(bays, machines, { beds }) {
  const rows = Array.from({ length: bays }, (_, i) => `bay${i}`);
  const fleet = Array.from({ length: machines }, (_, i) => ({ name: `m${i}`, bay: rows[i % bays], at: i }));
  const machineModes = ({ name, bay }) => [
    {
      name: 'print',
      ...(beds ? { bedSet: 333.15 } : {}),
      powers: [
        { node: `${name}.frame`, watts: 45 },
        { node: bay, watts: 15 },
      ],
      emissions: [],
    },
    { name: 'idle', powers: [{ node: `${name}.frame`, watts: 4 }], emissions: [] },
  ];
  return {
    title: `${bays} bays, ${machines} machines`,
    duration: 24 * HOUR,
    density: { model: 'ideal-gas' },
    fanDensityScaling: true,
    constants,
    zones: [
      {
        name: 'room',
        temperature: { kind: 'fixed', profile: [[0, OFFICE]] },
        pressure: { kind: 'fixed', value: 0 },
        zRef: 0,
        volume: 400,
        concentrations: 'fixed',
      },
      ...rows.map((name) => ({
        name,
        temperature: { kind: 'free', initial: OFFICE, heatCapacity: 2500 },
        pressure: { kind: 'solved' },
        zRef: 0.1,
        volume: 0.25,
        concentrations: 'fixed',
      })),
    ],
    nodes: fleet.flatMap(({ name }) => [
      { name: `${name}.frame`, heatCapacity: 5000, initial: OFFICE },
      { name: `${name}.bed`, heatCapacity: 1000, initial: OFFICE },
    ]),
    conductances: fleet.flatMap(({ name, bay }) => [
      { a: `${name}.frame`, b: bay, conductance: 3 },
      { a: `${name}.bed`, b: bay, conductance: 0.9 },
      { a: `${name}.bed`, b: `${name}.frame`, conductance: 0.25 },
    ]),
    walls: rows.flatMap((bay) =>
      ['back', 'door', 'top'].map((side, i) => ({
        name: `${bay}.${side}`,
        a: bay,
        b: 'room',
        area: 0.4 + 0.1 * i,
        layers: [ply],
        filmA: 4.5,
        filmB: 7.5,
        grid: 'middles',
        initial: OFFICE,
      })),
    ),
    convections: [],
    radiation: fleet.map(({ name, bay }) => ({
      a: `${name}.bed`,
      b: `${bay}.top.1`,
      area: 0.06,
      emissivity: 0.88,
      factor: 0.5,
    })),
    stars: [],
    heatSources: [],
    paths: rows.flatMap((bay, i) => pathsOf(bay, rows[i + 1])),
    exchanges: [],
    airChanges: [],
    machines: fleet.map((machine) => ({
      name: machine.name,
      ...(beds ? { bed: { node: `${machine.name}.bed`, powerMax: 300 } } : {}),
      modes: machineModes(machine),
    })),
    // With beds the jobs start minutes apart, as people start them; without, all at once.
    schedule: fleet.map(({ name, at }) => {
      const start = 8 * HOUR + (beds ? 420 * at : 0);
      return { machine: name, mode: 'print', start, end: start + 6 * HOUR };
    }),
    sensors: [],
    thermostats: [],
    contaminants: [],
    recirculations: [],
    carbonBeds: [],
    emissions: [],
    breaks: [],
  };
}

function pathsOf(bay, next) {
  const path = { open: 'always', filterEfficiency: {} };
  const orifice = { ...path, type: 'orifice', dischargeCoefficient: 0.61, count: 1, linearBelow: 0.005 };
  const seal = { ...path, type: 'crack', coefficient: 0.0004, exponent: 0.62, linearBelow: 0.005 };
  return [
    { ...orifice, name: `${bay}.intake`, from: 'room', to: bay, z: 0.12, area: 0.004 },
    { ...seal, name: `${bay}.seal1`, from: 'room', to: bay, z: 0.2 },
    { ...seal, name: `${bay}.seal2`, from: 'room', to: bay, z: 0.7 },
    {
      ...path,
      type: 'fan-path',
      name: `${bay}.exhaust`,
      from: bay,
      to: 'room',
      z: 0.75,
      fans: [
        {
          name: `${bay}.fan`,
          curve: { kind: 'poly', p0: 40, a: 900, b: 150000 },
          control: 'always',
          stopped: { linear: 0, quadratic: 0, minor: [{ loss: 3.5, area: 0.005 }] },
        },
      ],
      resistances: [{ name: 'filter', linear: 2100, quadratic: 60000 }],
      minor: [],
    },
    ...(next === undefined ? [] : [{ ...orifice, name: `${bay}.hole`, from: bay, to: next, z: 0.5, area: 0.003 }]),
  ];
}
