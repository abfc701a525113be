// What may quieten a machine on its stand: more mass, stiffer or softer foam, none at all.

import type { Cabinet, Machine } from '../../cabinet/cabinet.ts';
import type { Foam, Slab } from '../../cabinet/structure.ts';
import type { Remedy } from '../measure.ts';
import { millimetres, setStand } from '../remedy-edits.ts';

/** Paving slabs as they are sold, m: width, depth, thickness. */
const SLABS: readonly (readonly [number, number, number])[] = [
  [0.4, 0.4, 0.04],
  [0.5, 0.5, 0.05],
];

type Stand = Record<string, string | number>;

const slabText = ([width, depth, thickness]: readonly [number, number, number]): string =>
  [width, depth, thickness].map(millimetres).join(' x ');

function slabIn(slab: Slab | undefined): Stand {
  return slab === undefined
    ? {}
    : { slab: slabText([slab.width, slab.depth, slab.thickness]), 'slab-density': `${Math.round(slab.density)} kg/m3` };
}

function foamIn(foam: Foam | undefined): Stand {
  if (foam === undefined) return {};
  const pads =
    foam.pads === 0 ? {} : { pads: foam.pads, 'pad-size': `${millimetres(foam.width)} x ${millimetres(foam.depth)}` };
  return { foam: `${foam.kind} ${millimetres(foam.thickness)}`, ...pads };
}

const stand = (id: string, says: string, parts: readonly Stand[]): Remedy => ({
  says,
  edits: [setStand(id, Object.assign({}, ...parts) as Stand)],
});

/** A slab below it, twice the slab. */
export function heavierSlab(cabinet: Cabinet, id: string): Remedy[] {
  const machine = cabinet.machines[id]!;
  const { slab, foam } = machine.standsOn ?? {};
  if (slab !== undefined)
    return [
      stand(id, `twice the slab below ${id}`, [slabIn({ ...slab, thickness: 2 * slab.thickness }), foamIn(foam)]),
    ];
  return fitting(cabinet, machine).flatMap((size) => [
    stand(id, `a slab of ${slabText(size)} below ${id}`, [{ slab: slabText(size) }, foamIn(foam)]),
    stand(id, `a slab of ${slabText(size)} on bonded foam of 20 mm below ${id}`, [
      { slab: slabText(size), foam: 'bonded foam 20 mm' },
    ]),
  ]);
}

/** The first slab that its feet stand on and its bay takes. */
function fitting({ bays, inside }: Cabinet, { bay, feet }: Machine): (readonly [number, number, number])[] {
  const [left, right] = bays[bay]!.x;
  const fits = SLABS.filter(
    ([width, depth]) => width <= right - left && depth <= inside.depth && width >= feet.width && depth >= feet.depth,
  );
  return fits.slice(0, 1);
}

/** Foam that gives less, or none. */
export function stifferStand(cabinet: Cabinet, id: string): Remedy[] {
  const { slab, foam } = cabinet.machines[id]!.standsOn ?? {};
  if (foam === undefined) return [];
  const none = slab === undefined ? [] : [stand(id, `no foam below the slab of ${id}`, [slabIn(slab)])];
  return [...stifferFoam(cabinet, id), ...none];
}

/** Foam that gives less: a whole sheet in place of pads, a stiffer one. */
export function stifferFoam(cabinet: Cabinet, id: string): Remedy[] {
  const { slab, foam } = cabinet.machines[id]!.standsOn ?? {};
  if (foam === undefined) return [];
  return [
    ...(foam.pads > 0
      ? [
          stand(id, `a whole sheet of ${foam.kind} in place of pads below ${id}`, [
            slabIn(slab),
            foamIn({ ...foam, pads: 0 }),
          ]),
        ]
      : []),
    stand(id, `EVA of 10 mm below ${id}`, [slabIn(slab), { foam: 'EVA 10 mm' }]),
  ];
}

/** Foam that gives more. */
export function easierFoam(cabinet: Cabinet, id: string): Remedy[] {
  const { slab, foam } = cabinet.machines[id]!.standsOn ?? {};
  if (foam === undefined) return [];
  return [
    stand(id, `seating foam of 20 mm below ${id}`, [slabIn(slab), { foam: 'seating foam 20 mm' }]),
    ...(slab === undefined ? heavierSlab(cabinet, id) : []),
  ];
}
