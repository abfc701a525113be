// What the cabinet costs to buy and to build: whole sheets, everything else by the piece, and the hours.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { type CountedLot, type CutList, countedList } from '../../joinery/cut-list.ts';
import { formatQuantity } from '../../units/format.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { joinersHours } from './joiners-hours.ts';
import { budget } from './limits.ts';
import { INVENTED, inMoney, middleOf } from './money.ts';

const HOUR = 3600;

export function bill(cabinet: Cabinet): Measure[] {
  const { costs } = cabinet;
  const list = countedList(cabinet);
  const bought = costs.carcass !== undefined;
  const sheets = bought ? [] : sheetMeasures(cabinet, list);
  const hours = hoursOf(cabinet, list);
  return [total(cabinet, list, hours), ...sheets, hoursMeasure(cabinet, list, hours)];
}

/** Boards of a carcass that is built: whole sheets, and by the square metre what is cut to size. */
export function boardsPrice(
  cabinet: Cabinet,
  lots: readonly CountedLot[],
): { price: number; cuts: number; unpriced: string[] } {
  const { costs } = cabinet;
  let [price, cuts] = [0, 0];
  const unpriced: string[] = [];
  for (const lot of lots) {
    const perArea = costs.boards[lot.board];
    const sheet = costs.sheets[lot.board];
    const { count } = lot;
    if (perArea === undefined) unpriced.push(lot.board);
    else {
      // What fits no sheet must be joined of pieces: it is paid by its area.
      const loose = count?.tooLarge.reduce((sum, at) => sum + areaOf(lot.parts[at]!), 0) ?? 0;
      const area = count === undefined || sheet === undefined ? lot.area : count.planned * sheet[0] * sheet[1] + loose;
      price += area * middleOf(cabinet, perArea);
    }
    cuts += count?.cuts ?? 0;
  }
  return { price, cuts, unpriced: [...new Set(unpriced)] };
}

const areaOf = ({ length, width }: { readonly length: number; readonly width: number }): number => length * width;

/** Seconds of building, with what is set aside for the forgotten. */
function hoursOf({ costs }: Cabinet, { lots, joints, doors, shelves }: CutList<CountedLot>): number {
  if (costs.hours !== undefined) return costs.hours;
  const sawn = lots.filter(({ board }) => costs.sheets[board] !== undefined);
  if (costs.carcass !== undefined || sawn.length === 0) return 0;
  const parts = sawn.reduce((sum, lot) => sum + lot.parts.length, 0);
  return joinersHours({ parts, joints, doors, shelves }) * HOUR * costs.hoursFactor * (1 + costs.contingencyHours);
}

/** Everything listed that is not a board or a machine. */
function partsOf({ prices }: Cabinet): [path: string, price: { readonly low: number; readonly high: number }][] {
  return Object.entries(prices).filter(
    ([path]) => !/^(?:faces|partitions|machines)\./.test(path) && !/^doors\.[^.]+$/.test(path),
  );
}

/** Parts of air paths and sources of heat of which nobody said a price. */
function unpricedParts({ paths, heats, prices }: Cabinet): string[] {
  const parts = Object.entries(paths).flatMap(([id, { parts: of }]) =>
    of.flatMap((part, at) =>
      part.part === 'hole' || prices[`paths.${id}.parts.${at}`] !== undefined ? [] : [`air.${id}: ${part.part}`],
    ),
  );
  return [
    ...parts,
    ...Object.keys(heats).flatMap((id) => (prices[`heats.${id}`] === undefined ? [`heats.${id}`] : [])),
  ];
}

function total(cabinet: Cabinet, list: CutList<CountedLot>, seconds: number): Measure {
  const { costs, currency } = cabinet;
  const limit = budget(cabinet, 'bill');
  const shared = {
    trade: 'cost',
    quantity: 'bill',
    part: 'cabinet',
    title: inMoney('parts and hours of the cabinet, without machines', cabinet),
    unit: 'money',
    ...(limit === undefined ? {} : { limit }),
    remedies: [],
    cause: causes.dear,
    weight: 0.4,
    better: 'lower',
    compared: true,
  } as const;
  const boards = boardsPrice(cabinet, list.lots);
  const carcass = costs.carcass === undefined ? boards.price : middleOf(cabinet, costs.carcass);
  const unpriced = [
    ...(costs.carcass === undefined ? boards.unpriced.map((board) => `boards: ${board}`) : []),
    ...unpricedParts(cabinet),
  ];
  const parts = partsOf(cabinet).reduce((sum, [, price]) => sum + middleOf(cabinet, price), 0);
  const devices = Object.values(costs.devices).reduce((sum, price) => sum + middleOf(cabinet, price), 0);
  const cuts = costs.carcass !== undefined || costs.cut === undefined ? 0 : boards.cuts * middleOf(cabinet, costs.cut);
  const material = carcass + parts + devices + cuts;
  const rate = costs.hour === undefined ? 0 : middleOf(cabinet, costs.hour);
  const labour = (seconds / HOUR) * rate;
  // Without one price of its own, a file in another money knows nothing of what it costs.
  if (material === 0 && unpriced.length > 0)
    return {
      ...shared,
      missing: `no price is known in ${currency}: the catalogue's are in EUR and are not converted; give prices: by kind of part`,
      steps: [{ text: `without a price: ${unpriced.join(', ')}` }],
    };
  const value = material * (1 + costs.contingencyMaterial) + labour;
  return {
    ...shared,
    value,
    get steps(): readonly Step[] {
      const hours = formatQuantity('duration', seconds);
      return [
        {
          text:
            costs.carcass === undefined
              ? 'boards, whole sheets where they come in sheets (estimated): no waste is added to them'
              : 'carcass as it is bought',
          value: carcass,
          unit: 'money',
          source: INVENTED,
          inputs: [costs.carcass === undefined ? 'costs.boards' : 'costs.carcass', 'costs.pricePosition'],
        },
        ...(cuts > 0
          ? [{ text: `${boards.cuts} cuts of a shop`, value: cuts, unit: 'money', inputs: ['costs.cut'] }]
          : []),
        {
          text: 'fans, filters, ducts, seals, lamps and what else is listed',
          value: parts,
          unit: 'money',
          source: INVENTED,
        },
        ...(devices > 0
          ? [
              {
                text: 'detectors, cut-off chain, extinguisher',
                value: devices,
                unit: 'money',
                inputs: ['costs.devices'],
              },
            ]
          : []),
        {
          text: 'set aside for screws, glue, paint and what was forgotten',
          value: material * costs.contingencyMaterial,
          unit: 'money',
          inputs: ['costs.contingencyMaterial'],
        },
        rate > 0
          ? { text: `${hours} of building`, value: labour, unit: 'money', inputs: ['costs.hour', 'costs.hoursFactor'] }
          : { text: `${hours} of building in your own time, counted as nothing` },
        ...(unpriced.length > 0
          ? [{ text: `not counted, as nobody said a price in ${currency}: ${unpriced.join(', ')}` }]
          : []),
        { text: 'no pay-back is reckoned: a cabinet is bought for quiet, air and order' },
      ];
    },
  };
}

function sheetMeasures(cabinet: Cabinet, { lots }: CutList<CountedLot>): Measure[] {
  return lots.flatMap((lot): Measure[] => {
    const { count } = lot;
    const [length, width] = cabinet.costs.sheets[lot.board] ?? [];
    if (count === undefined || length === undefined || width === undefined) return [];
    const name = `${lot.board} ${formatQuantity('length', lot.thickness)}`;
    const shared = {
      trade: 'cost',
      quantity: 'sheets',
      part: `boards.${name.replaceAll('.', '-').replaceAll('/', '-')}`,
      title: `whole sheets of ${name}`,
      unit: 'number',
      remedies: [],
      weight: 0.1,
      better: 'lower',
    } as const;
    const large = count.tooLarge.map((at) => lot.parts[at]!);
    const mayTurn = cabinet.costs.turned || large.every(({ turned }) => turned === true);
    if (large.length > 0)
      return [
        {
          ...shared,
          missing: `${large.map(({ of, length: l, width: w }) => `${of} of ${formatQuantity('length', l)} x ${formatQuantity('length', w)}`).join(', ')} fits no sheet of ${formatQuantity('length', length)} x ${formatQuantity('length', width)}${mayTurn ? '' : ' with its grain along'}: give costs.sheets.${lot.board}${mayTurn ? ', or join it' : ', or costs.turned: yes'}`,
          steps: [],
        },
      ];
    return [
      {
        ...shared,
        value: count.planned,
        get steps(): readonly Step[] {
          return [
            { text: `${lot.parts.length} parts`, value: lot.area, unit: 'area' },
            {
              text: 'no plan does with fewer: their area by that of a sheet',
              value: count.atLeast,
              unit: 'number',
              formula: '⌈Σ a / A⌉',
              inputs: [`costs.sheets.${lot.board}`],
            },
            {
              text: 'estimated by a quick plan of strips from edge to edge and crosscuts, kerf and trimmed edges counted; the sheets and the buying list of papers search further, and may need one fewer',
              value: count.planned,
              unit: 'number',
              formula: 'parts in a length: n = ⌊(L + k)/(p + k)⌋',
              source: 'best fit by decreasing width, after Coffman, Garey, Johnson, Tarjan 1980',
              inputs: ['costs.kerf', 'costs.trim'],
            },
            { text: 'of the sheets bought, this much becomes parts', value: count.yield, unit: 'share' },
            {
              text:
                cabinet.costs.turned || lot.parts.every(({ turned }) => turned === true)
                  ? 'parts may be turned'
                  : 'parts lie along the grain; costs.turned: yes lets them be turned',
            },
            {
              text: 'sizes as with butt joints, tops and bottoms over the sides, backs over all; rebates and housings add to them',
            },
          ];
        },
      },
    ];
  });
}

function hoursMeasure(cabinet: Cabinet, list: CutList<CountedLot>, seconds: number): Measure {
  const { costs } = cabinet;
  return {
    trade: 'cost',
    quantity: 'hours',
    part: 'cabinet',
    title: 'hours of building',
    value: seconds,
    unit: 'duration',
    get steps(): readonly Step[] {
      if (costs.hours !== undefined)
        return [{ text: 'as the file says', value: seconds, unit: 'duration', inputs: ['costs.hours'] }];
      if (seconds === 0)
        return [
          { text: 'no boards of this carcass are sawn by a joiner, so that the rule says nothing: give costs.hours' },
        ];
      return [
        {
          text: 'parts',
          value: list.lots
            .filter(({ board }) => costs.sheets[board] !== undefined)
            .reduce((sum, { parts }) => sum + parts.length, 0),
          unit: 'number',
        },
        { text: 'joints', value: list.joints, unit: 'length' },
        {
          text: `${list.doors} doors, ${list.shelves} shelves`,
          formula: 'h = 0.20 parts + 0.35 m of joint + 0.5 doors + 0.25 shelves + 3, and 20 % for the forgotten',
          source: 'own rule of thumb; three bays take 10 to 18 h in single skin, 18 to 30 h in double',
          inputs: ['costs.hoursFactor', 'costs.contingencyHours'],
        },
      ];
    },
    remedies: [],
    weight: 0.1,
    better: 'lower',
  };
}
