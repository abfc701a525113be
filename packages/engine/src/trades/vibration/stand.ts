// A machine on its slab and foam, on a board that gives: masses, springs and frequencies of it all.

import { GRAVITY, naturalFrequency, padStiffness, swayStiffness, twoMassFrequencies } from '@stillair/physics';
import type { Cabinet, Machine } from '../../cabinet/cabinet.ts';
import type { Foam } from '../../cabinet/structure.ts';
import { arealMass, type Carrier, carrierOf, carriers, giveAt, slabMass } from '../standing-on.ts';

export interface Stand {
  readonly machine: Machine;
  readonly slab: number;
  /** kg, that swings on the foam: machine and slab. */
  readonly mass: number;
  readonly carrier?: Carrier;
  /** m/N of the board below the machine; 0 on the floor, absent when not known. */
  readonly give?: number;
  readonly springs?: Springs;
  /** Hz, upright: machine and slab on foam and board together; absent when neither gives. */
  readonly upright?: number;
}

export interface Springs {
  /** Upright, against fast motion, N/m. */
  readonly upright: number;
  /** Sideways at the centre of gravity, N/m. */
  readonly sway: number;
  readonly uprightAlone: number;
  readonly swayHz: number;
  readonly damping: number;
  /** Compression under the weight, share of its thickness. */
  readonly strain: number;
  readonly pressed: number;
}

/** Share of a board's own mass that swings with its middle. Source: the shape of its first mode, sin² averaged. */
const MODAL = 0.5;

export function standOf(cabinet: Cabinet, machine: Machine): Stand {
  const all = carriers(cabinet);
  const carrier = carrierOf(cabinet, machine, all);
  const slab = slabMass(machine);
  const mass = machine.mass + slab;
  const give = carrier === undefined ? undefined : giveAt(cabinet, carrier, machine);
  const foam = machine.standsOn?.foam;
  const springs = foam === undefined ? undefined : springsOf(machine, foam, mass, slab);
  const upright = uprightOf(mass, springs, carrier, give);
  return {
    machine,
    slab,
    mass,
    ...(carrier === undefined ? {} : { carrier }),
    ...(give === undefined ? {} : { give }),
    ...(springs === undefined ? {} : { springs }),
    ...(upright === undefined ? {} : { upright }),
  };
}

function uprightOf(
  mass: number,
  springs: Springs | undefined,
  carrier: Carrier | undefined,
  give: number | undefined,
): number | undefined {
  if (springs === undefined) return give === undefined || give === 0 ? undefined : naturalFrequency(1 / give, mass);
  if (give === undefined || give === 0 || carrier === undefined) return springs.uprightAlone;
  const board = Math.max(0.1, MODAL * arealMass(carrier.build) * (carrier.x[1] - carrier.x[0]) * carrier.depth);
  return twoMassFrequencies(
    { mass, stiffness: springs.upright, loss: 0 },
    { mass: board, stiffness: 1 / give, loss: 0 },
  )[0];
}

/** Shear stiffness of foam and rubber over that in compression: they hardly change their volume, G = E/3. */
const SHEAR = 1 / 3;

function springsOf(machine: Machine, foam: Foam, mass: number, slab: number): Springs {
  const area = Math.max(1, foam.pads) * foam.width * foam.depth;
  const own = foam.stiffness;
  const slow = foam.solid ? padStiffness(own, foam.width, foam.depth, foam.thickness) : own;
  const fast = (modulus: number): number => (modulus * foam.stiffening * area) / foam.thickness;
  const upright = fast(slow);
  const shear = fast(own) * SHEAR;
  const sway = swayStiffness(shear, upright, reachOf(machine, foam), heightOf(machine, mass, slab));
  const strain = (GRAVITY * mass) / (slow * area);
  return {
    upright,
    sway,
    uprightAlone: naturalFrequency(upright, mass),
    swayHz: naturalFrequency(sway, mass),
    damping: foam.damping,
    strain,
    pressed: strain * foam.thickness,
  };
}

/** Radius of gyration of the foam in the direction in which the machine shakes most: of a travelling bed its depth, else the shorter. */
function reachOf({ feet, standsOn, style }: Machine, { pads, width, depth }: Foam): number {
  const base = standsOn?.slab ?? feet;
  const along = (whole: number, pad: number): number =>
    pads > 0 ? Math.max(whole - pad, pad) / 2 : whole / Math.sqrt(12);
  const deep = along(base.depth, depth);
  return style === 'moving-bed' ? deep : Math.min(deep, along(base.width, width));
}

/** Centre of gravity above the foam, m: a machine's is taken at four tenths of its height. */
function heightOf({ mass: own, size, standsOn }: Machine, mass: number, slab: number): number {
  const thick = standsOn?.slab?.thickness ?? 0;
  return (own * (thick + 0.4 * size.height) + slab * (thick / 2)) / mass;
}
