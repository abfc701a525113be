// Writes a network as a bare network file that reads back to the same network.

import { Document, isMap, isSeq } from 'yaml';
import type {
  AirPath,
  CarbonBed,
  Contaminant,
  Convection,
  EmissionCourse,
  Exchange,
  Fan,
  FanPath,
  MinorLoss,
  Network,
  NetworkMachine,
  Profile,
  Thermostat,
  Wall,
  When,
  Zone,
} from './network.ts';
import type { Analysis } from './read-network.ts';

type Plain = Readonly<Record<string, unknown>>;

/** YAML text of a network: one line a part. */
export function writeNetwork(network: Network, analysis: Analysis = 'transient'): string {
  const { constants, density } = network;
  const document = new Document({
    version: 1,
    ...(network.title === '' ? {} : { title: network.title }),
    duration_s: network.duration,
    density: density.model === 'constant' ? { model: 'constant', value_kg_m3: density.value } : { model: 'ideal_gas' },
    fan_density_scaling: network.fanDensityScaling,
    ...(analysis === 'transient' ? {} : { analysis: analysis.replace('-', '_') }),
    constants: {
      g_m_s2: constants.gravity,
      p_atm_Pa: constants.atmosphere,
      R_J_kgK: constants.gasConstant,
      cp_J_kgK: constants.heatCapacity,
      rho_ref_kg_m3: constants.referenceDensity,
      sigma_W_m2K4: constants.stefanBoltzmann,
    },
    ...lists(network),
  });
  if (isMap(document.contents)) {
    for (const { value } of document.contents.items) {
      if (isMap(value)) value.flow = true;
      if (!isSeq(value)) continue;
      for (const item of value.items) if (isMap(item)) item.flow = true;
    }
  }
  return document.toString({ lineWidth: 0, flowCollectionPadding: false });
}

/** Only the lists that hold something. */
function lists(network: Network): Plain {
  const all: Plain = {
    zones: network.zones.map(zone),
    nodes: network.nodes.map(({ name, heatCapacity, initial }) => ({
      name,
      C_J_K: heatCapacity,
      T0_C: celsius(initial),
    })),
    conductances: network.conductances.map(({ a, b, conductance, active }) => ({
      a,
      b,
      W_K: conductance,
      ...when('active', active),
    })),
    walls: network.walls.map(wall),
    convections: network.convections.map(convection),
    radiation: network.radiation.map(({ a, b, area, emissivity, factor }) => ({
      a,
      b,
      area_m2: area,
      emissivity,
      factor,
    })),
    radiant_stars: network.stars.map(({ name, members }) => ({
      name,
      members: members.map(({ node, weight }) => ({ node, weight_m2: weight })),
    })),
    heat_sources: network.heatSources.map(({ name, node, watts, active, profile }) => ({
      name,
      node,
      W: watts,
      ...when('active', active),
      ...(profile === undefined ? {} : { profile }),
    })),
    paths: network.paths.map(airPath),
    exchanges: network.exchanges.map(exchange),
    air_change: network.airChanges.map(({ zone: inside, with: outside, perSecond }) => ({
      zone: inside,
      with: outside,
      per_s: perSecond,
    })),
    machines: network.machines.map(machine),
    schedule: network.schedule.map((entry) => ({
      machine: entry.machine,
      mode: entry.mode,
      start_s: entry.start,
      end_s: entry.end,
    })),
    sensors: network.sensors.map(({ name, at, lag, offset }) => ({ name, at, lag_s: lag, offset_K: offset })),
    thermostats: network.thermostats.map(thermostat),
    contaminants: network.contaminants.map(contaminant),
    recirculation: network.recirculations.map(({ name, zone: inside, flow, efficiency, active }) => ({
      name,
      zone: inside,
      m3_s: flow,
      eff: efficiency,
      ...when('active', active),
    })),
    carbon_beds: network.carbonBeds.map(carbonBed),
    emissions: network.emissions.map((emission) => ({
      contaminant: emission.contaminant,
      zone: emission.zone,
      rate: emission.rate,
      ...when('active', emission.active),
      ...course(emission),
    })),
    breaks_s: network.breaks,
  };
  return Object.fromEntries(Object.entries(all).filter(([, list]) => (list as readonly unknown[]).length > 0));
}

function zone({ name, temperature, pressure, zRef, volume, concentrations }: Zone): Plain {
  const [first, ...more] = temperature.kind === 'fixed' ? temperature.profile : [];
  const heat =
    temperature.kind === 'free'
      ? { T: 'free', T0_C: celsius(temperature.initial), heat_capacity_J_K: temperature.heatCapacity }
      : {
          T: 'fixed',
          T_C: more.length === 0 && first !== undefined ? celsius(first[1]) : inCelsius(temperature.profile),
        };
  return {
    name,
    ...heat,
    pressure: pressure.kind,
    ...(pressure.kind === 'fixed' ? { p_ref_Pa: pressure.value } : {}),
    z_ref_m: zRef,
    volume_m3: volume,
    conc: concentrations,
  };
}

function inCelsius(profile: Profile): Profile {
  return profile.map(([time, value]) => [time, celsius(value)]);
}

/** The shortest number that reads back to exactly this temperature. */
function celsius(kelvin: number): number {
  for (let digits = 6; digits < 17; digits++) {
    const short = Number((kelvin - 273.15).toPrecision(digits));
    if (short + 273.15 === kelvin) return short;
  }
  return kelvin - 273.15;
}

function when(key: string, active: When | undefined): Plain {
  return active === undefined ? {} : active === 'always' && key !== 'when' ? {} : { [key]: whenPlain(active) };
}

function whenPlain(active: When): unknown {
  if (active === 'always') return 'always';
  if ('anyOf' in active) return { any_of: active.anyOf.map(whenPlain) };
  if ('allOf' in active) return { all_of: active.allOf.map(whenPlain) };
  if ('not' in active) return { not: whenPlain(active.not) };
  return active;
}

function wall({ name, a, b, area, layers, filmA, filmB, grid, initial }: Wall): Plain {
  return {
    name,
    a,
    b,
    area_m2: area,
    ...(filmA === undefined ? {} : { h_a_W_m2K: filmA }),
    ...(filmB === undefined ? {} : { h_b_W_m2K: filmB }),
    grid,
    layers: layers.map(({ thickness, conductivity, density, heatCapacity, nodes }) => ({
      thickness_m: thickness,
      k_W_mK: conductivity,
      rho_kg_m3: density,
      c_J_kgK: heatCapacity,
      nodes,
    })),
    T0_C: celsius(initial),
  };
}

function convection({ surface, air, area, faces, length, factor, forced, heatTo }: Convection): Plain {
  const films = forced.map(({ film, active, fan }) => ({
    h_W_m2K: film,
    ...when('active', active),
    ...(fan === undefined ? {} : { fan }),
  }));
  return {
    surface,
    air,
    area_m2: area,
    faces,
    length_m: length,
    factor,
    ...(films.length === 0 ? {} : { forced: films }),
    ...(heatTo === undefined ? {} : { heat_to: heatTo }),
  };
}

function airPath(path: AirPath): Plain {
  const { name, from, to, z, open, filterEfficiency } = path;
  return {
    name,
    type: path.type.replace('-', '_'),
    from,
    to,
    z_m: z,
    ...law(path),
    ...when('open', open),
    ...(Object.keys(filterEfficiency).length === 0 ? {} : { filter_eff: filterEfficiency }),
  };
}

function law(path: AirPath): Plain {
  switch (path.type) {
    case 'orifice':
      return { Cd: path.dischargeCoefficient, area_m2: path.area, count: path.count, dp_lin_Pa: path.linearBelow };
    case 'crack':
      return { c_m3_s: path.coefficient, n: path.exponent, dp_lin_Pa: path.linearBelow };
    case 'fixed-flow':
      return { kg_s: path.flow };
    case 'tall-opening':
      return { Cd: path.dischargeCoefficient, width_m: path.width, height_m: path.height, dp_lin_Pa: path.linearBelow };
    case 'fan-path':
      return fanParts(path);
  }
}

function fanParts({ fans, resistances, minor, flap }: FanPath): Plain {
  const series = [
    ...resistances.map(({ name, linear, quadratic }) => ({ name, a_lin: linear, b_quad: quadratic })),
    ...(minor.length === 0 ? [] : [{ K: minor.map(minorLoss) }]),
  ];
  return {
    ...(fans.length === 0 ? {} : { fan: fans.map(fan) }),
    ...(series.length === 0 ? {} : { resistance: series }),
    ...(flap === undefined ? {} : { flap: { opens_at_Pa: flap.opensAt, leak_area_m2: flap.leakArea } }),
  };
}

function minorLoss({ name, loss, area }: MinorLoss): Plain {
  return { ...(name === undefined ? {} : { name }), K: loss, area_m2: area };
}

function fan({ name, curve, control, stopped, speed }: Fan): Plain {
  const shape =
    curve.kind === 'poly' ? { poly: { p0_Pa: curve.p0, a: curve.a, b: curve.b } } : { points: curve.points };
  return {
    name,
    curve: shape,
    ...when('control', control),
    stopped: { a_lin: stopped.linear, b_quad: stopped.quadratic, K: stopped.minor.map(minorLoss) },
    ...(speed === undefined ? {} : { speed: speedPlain(speed) }),
  };
}

function speedPlain(speed: NonNullable<Fan['speed']>): unknown {
  if (typeof speed === 'number') return speed;
  if ('stages' in speed)
    return { stages: speed.stages.map((stage) => ({ when: whenPlain(stage.when), speed: stage.speed })) };
  const { sensor, from, to, low, high } = speed.proportional;
  return { proportional: { sensor, from_C: celsius(from), to_C: celsius(to), low, high } };
}

function exchange({ name, a, b, active, law: mixing }: Exchange): Plain {
  return { name, a, b, ...mixingPlain(mixing), ...when('active', active) };
}

function mixingPlain(mixing: Exchange['law']): Plain {
  switch (mixing.kind) {
    case 'constant':
      return { m3_s: mixing.flow };
    case 'vertical-opening':
      return {
        law: 'vertical_opening',
        Cd: mixing.dischargeCoefficient,
        width_m: mixing.width,
        height_m: mixing.height,
      };
    case 'horizontal-opening': {
      const { area, round, coefficient, path } = mixing;
      return { law: 'horizontal_opening', area_m2: area, round, coefficient, ...(path === undefined ? {} : { path }) };
    }
    case 'plume':
      return { law: 'plume', coefficient: mixing.coefficient, sources: mixing.sources };
  }
}

function machine({ name, bed, modes }: NetworkMachine): Plain {
  return {
    name,
    ...(bed === undefined
      ? {}
      : {
          bed: { node: bed.node, P_max_W: bed.powerMax, ...(bed.supply === undefined ? {} : { supply: bed.supply }) },
        }),
    modes: modes.map((mode) => ({
      name: mode.name,
      ...(mode.bedSet === undefined ? {} : { bed_set_C: celsius(mode.bedSet) }),
      powers: mode.powers.map(({ node, watts }) => ({ node, W: watts })),
      emission: mode.emissions.map((emission) => ({
        contaminant: emission.contaminant,
        zone: emission.zone,
        rate: emission.rate,
        ...course(emission),
      })),
    })),
  };
}

function course({ burst, tail }: EmissionCourse): Plain {
  return {
    ...(burst === undefined ? {} : { burst: { ratio: burst.ratio, time_s: burst.time } }),
    ...(tail === undefined ? {} : { tail: { share: tail.share, time_s: tail.time } }),
  };
}

function thermostat({ name, sensor, on, off, sense, initial }: Thermostat): Plain {
  const [onKey, offKey] = sense === 'above' ? ['on_above', 'off_below'] : ['on_below', 'off_above'];
  const levels =
    typeof sensor === 'string'
      ? { [`${onKey}_C`]: celsius(on), [`${offKey}_C`]: celsius(off) }
      : { [onKey]: on, [offKey]: off };
  return { name, sensor, ...levels, initial: initial ? 'on' : 'off' };
}

function contaminant({ name, unit, scale, initial, deposition, coagulation, outside }: Contaminant): Plain {
  return {
    name,
    unit,
    scale,
    initial,
    deposition_per_s: deposition,
    ...(coagulation === undefined ? {} : { coagulation_m3_s: coagulation }),
    ...(outside === undefined ? {} : { outside }),
  };
}

function carbonBed({ name, in: path, at, mass, vapours }: CarbonBed): Plain {
  return {
    name,
    in: path,
    at,
    mass_kg: mass,
    vapours: vapours.map((vapour) => ({
      contaminant: vapour.contaminant,
      eff: vapour.efficiency,
      vapour: vapour.vapour,
      kg_per_unit: vapour.kilogramsPerUnit,
      load_kg_kg: vapour.load,
    })),
  };
}
