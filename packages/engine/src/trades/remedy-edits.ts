// How a change is written into a cabinet file. Keys that more than one trade writes are named here; those of one alone, in its remedies.
// A trade sees the resolved cabinet, not the text: where a path's hole may be written in two ways, the usual one is taken
// (`hole:` for the first part); the other is refused by the reader, and the remedy is then not offered.

import type { CabinetPath, Control, Door, Edit, Layer, Partition } from '../cabinet/cabinet.ts';
import { joinPath } from '../cabinet/edit-path.ts';

export type Value = string | number | boolean | readonly Value[] | { readonly [key: string]: Value };

export const set = (path: readonly (string | number)[], value: Value): Edit => ({ set: { [joinPath(path)]: value } });
const add = (path: readonly (string | number)[], value: Value): Edit => ({ add: { [joinPath(path)]: value } });

export const millimetres = (metres: number): string => `${Math.round(metres * 1000)} mm`;
const celsius = (kelvin: number): string => `${Math.round(10 * (kelvin - 273.15)) / 10} °C`;

/** Place of a resolved part in the file's `parts:`; -1 for the path's own hole. */
function listed({ parts }: CabinetPath, at: number): number {
  return parts[0]?.part === 'hole' ? at - 1 : at;
}

export const partPath = (id: string, path: CabinetPath, at: number): (string | number)[] => [
  'air',
  id,
  'parts',
  listed(path, at),
];

export const setFanKind = (id: string, path: CabinetPath, at: number, kind: string): Edit =>
  set([...partPath(id, path, at), 'fan'], kind);

export const setFilterKind = (id: string, path: CabinetPath, at: number, kind: string): Edit =>
  set([...partPath(id, path, at), path.parts[at]!.part], kind);

export const setFanSpeed = (id: string, path: CabinetPath, at: number, share: number): Edit =>
  set([...partPath(id, path, at), 'speed'], `${Math.round(100 * share)} %`);

export const setControl = (id: string, path: CabinetPath, at: number, control: Control): Edit =>
  set([...partPath(id, path, at), 'control'], controlText(control));

export const removePart = (id: string, path: CabinetPath, at: number): Edit => ({
  remove: [joinPath(partPath(id, path, at))],
});

/** Puts a part behind all others, or before them. */
export function addPart(id: string, path: CabinetPath, group: string, kind: string, where: 'first' | 'last'): Edit {
  const count = path.parts.length - (path.parts[0]?.part === 'hole' ? 1 : 0);
  if (count === 0) return set(['air', id, 'parts'], [{ [group]: kind }]);
  return add(['air', id, 'parts', where === 'first' ? 0 : count], { [group]: kind });
}

export function controlText(control: Control): Value {
  switch (control.kind) {
    case 'job':
      return {
        job: [...control.machines],
        lead: `${Math.round(control.lead / 60)} min`,
        'run-on': `${Math.round(control.runOn / 60)} min`,
      };
    case 'thermostat':
      return { thermostat: control.sensor, on: celsius(control.on), off: celsius(control.off) };
    default:
      return control.kind === 'never' ? 'never' : 'always';
  }
}

/** The whole path again with a hole of another width: right however its one hole was written. */
export function setOnlyHole(id: string, { from, to, place, blows, parts }: CabinetPath, diameter: number): Edit {
  const [only] = parts;
  return set(['air', id], {
    from,
    to,
    hole: `${millimetres(diameter)} round`,
    ...(only?.part === 'hole' && only.count > 1 ? { count: only.count } : {}),
    at: { face: place.face, along: millimetres(place.along), z: millimetres(place.z) },
    ...(blows === 'in' ? {} : { blows }),
  });
}

export const setBlows = (id: string, blows: 'wall' | 'away'): Edit => set(['air', id, 'blows'], blows);
export const setTo = (id: string, to: string): Edit => set(['air', id, 'to'], to);

export const addHole = (id: string, from: string, to: string, diameter: number): Edit =>
  add(['air', id], { from, to, hole: `${millimetres(diameter)} round` });

export const addPath = (id: string, from: string, to: string, parts: readonly Value[]): Edit =>
  add(['air', id], { from, to, parts });

export const machineOutside = (id: string, what: 'electronics' | 'supply'): Edit =>
  what === 'electronics'
    ? set(['machines', id, 'electronics-inside'], false)
    : set(['machines', id, 'supply', 'inside'], false);

/** Boards as the file names them: a lining stands elsewhere. */
const boards = (layers: readonly Layer[]): string[] =>
  layers
    .filter(({ lining }) => lining !== true)
    .map(({ material, thickness }) => `${material} ${Math.round(thickness * 10_000) / 10} mm`);

export const setFaceBoards = (face: string, layers: readonly Layer[], more: readonly string[]): Edit =>
  set(['cabinet', 'faces', face, 'made-of'], [...boards(layers), ...more]);

export const setFaceLayers = (face: string, layers: readonly Layer[]): Edit =>
  set(['cabinet', 'faces', face, 'made-of'], boards(layers));

export const setLining = (of: string, faces: readonly string[]): Edit =>
  set(['cabinet', 'lining'], { of, faces: [...faces] });

/** Another leaf in the same frame: what its seal leaves open stays. */
export const setDoorLeaf = (id: string, { sealGap, sealDepth }: Door, leaf: Layer): Edit =>
  id === 'door'
    ? set(['cabinet', 'door'], {
        'made-of': boards([leaf]),
        'seal-gap': `${Math.round(1e5 * sealGap) / 100} mm`,
        'seal-depth': millimetres(sealDepth),
      })
    : set(['cabinet', 'doors', id, 'made-of'], boards([leaf]));

/** `door` is the id of the one door that stands under `cabinet: door:`. */
export const setDoor = (id: string, layers: readonly Layer[], more: readonly string[], seal?: string): Edit =>
  id === 'door'
    ? set(['cabinet', 'door'], { 'made-of': [...boards(layers), ...more], ...(seal === undefined ? {} : { seal }) })
    : set(
        ['cabinet', 'doors', id, ...(seal === undefined ? ['made-of'] : ['seal'])],
        seal ?? [...boards(layers), ...more],
      );

export const setOnAlarm = (key: 'fans' | 'heaters' | 'flaps', value: 'stop' | 'cut' | 'shut'): Edit =>
  set(['protection', 'on-alarm', key], value);
export const setAgent = (path: readonly string[], agent: string): Edit => set([...path, 'agent'], agent);
export const setLatch = (): Edit => set(['protection', 'latch'], true);
export const openContact = (id: string): Edit => set(['protection', 'chain', id, 'contact'], 'opens');
export const setOpensAt = (id: string, degrees: number): Edit =>
  set(['protection', 'chain', id, 'opens-at'], `${degrees} °C`);
export const addDetector = (id: string, detector: { readonly [key: string]: Value }): Edit =>
  add(['protection', 'detectors', id], detector);
export const setDetectorClass = (id: string, heatClass: string): Edit =>
  set(['protection', 'detectors', id, 'class'], heatClass);
export const slowDetector = (id: string): Edit => set(['protection', 'detectors', id, 'rate-of-rise'], false);
export const detectorBeforeFilter = (id: string): Edit => set(['protection', 'detectors', id, 'filter'], 'before');
export const keepOutside = (id: string): Edit => set(['protection', 'stored', id, 'where'], 'outside');

/** A key of a shelf; where the file has no such shelf (its id is then made of its bays), the shelf is put in. */
export function setShelf({ id, bays }: Pick<Partition, 'id' | 'bays'>, key: string, value: Value): Edit {
  return id === bays.join('-')
    ? add(['shelves', id], { between: [...bays], [key]: value })
    : set(['shelves', id, key], value);
}

export const shelfBoards = (layers: readonly Layer[]): Value => boards(layers);

export const strapToWall = (): Edit => set(['cabinet', 'wall-strap'], 'yes');

export const setBottomStrip = (strip: Value): Edit => set(['cabinet', 'bottom', 'lipping'], strip);

export const setBottomBoards = (layers: readonly Layer[]): Edit =>
  set(['cabinet', 'faces', 'bottom', 'made-of'], boards(layers));

export const setHinges = (id: string, count: number): Edit =>
  id === 'door'
    ? set(['cabinet', 'door', 'hinges', 'count'], count)
    : set(['cabinet', 'doors', id, 'hinges', 'count'], count);

/** What a machine stands on, as a whole. */
export const setStand = (id: string, stand: Value): Edit => set(['machines', id, 'stands-on'], stand);
export const setCarcassFinish = (finish: string): Edit => set(['cabinet', 'finish'], finish);

const setAll = (path: readonly string[], values: Readonly<Record<string, Value>>): Edit => ({
  set: Object.fromEntries(Object.entries(values).map(([key, value]) => [joinPath([...path, key]), value])),
});

export const setLamp = (id: string, values: Readonly<Record<string, Value>>): Edit => setAll(['heats', id], values);
export const setLampControl = (id: string, control: Control): Edit =>
  set(['heats', id, 'control'], controlText(control));
export const addLamp = (id: string, kind: string, bay: string): Edit => add(['heats', id], { kind, bay });
export const setCamera = (id: string, values: Readonly<Record<string, Value>>): Edit => setAll(['cameras', id], values);
