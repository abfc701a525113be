import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { evaluateHere } from '../../judge/variants.ts';
import { spreadPicture } from '../../papers/spread-picture.ts';
import type { Trade } from '../../trades/measure.ts';
import { BLOCKS, evenShares } from './even-samples.ts';
import { spread } from './spread.ts';

const TEXT = `
stillair: 1
title: a made-up cabinet
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { z: 0 mm to 900 mm } }
air: { hole: { from: room, to: only, hole: 80 mm round } }
days: { usual: {} }
options:
  same: { title: another title, edits: [ { set: { title: another } } ] }
  airy: { title: twice the air, edits: [ { set: { room.air-changes: 1 /h } } ] }
`;

function sourceOf(text: string): ReadSource {
  const answer = readCabinet('test.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'test.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}

const source = sourceOf(TEXT);

/** A trade of one standing measure, made up: whatever a function says of the cabinet. */
function told(of: (cabinet: Cabinet) => number, limit: number, quantity = 'made-up'): Trade {
  return {
    id: 'heat',
    title: 'made up',
    standing: (cabinet) => [
      {
        trade: 'heat',
        quantity,
        part: 'cabinet',
        title: `made up ${quantity}`,
        value: of(cabinet),
        unit: 'number',
        limit: { id: 'made-up', kind: 'at-most', value: limit, source: 'made up for this test', standing: 'own' },
        steps: [],
        remedies: [],
        weight: 1,
        better: 'lower',
      },
    ],
  };
}

const both = (...each: readonly Trade[]): Trade => ({
  id: 'heat',
  title: 'made up',
  standing: (cabinet) => each.flatMap((trade) => trade.standing!(cabinet)),
});

/** Whatever a day does is left out: these measures ask for none. */
const still = { days: [], options: [] } as const;
const id = 'heat/made-up/cabinet/standing';

describe('spread', () => {
  it('exact: a finding that is one input has that input’s percentiles, chance and all of its variance', async () => {
    const study = await spread(source, {
      ...still,
      samples: 256,
      trades: [told(({ factors }) => factors.bedLoss, 1.25)],
    });
    const finding = study.findings.find((each) => each.id === id)!;
    expect(finding.p10).toBeCloseTo(0.75, 2);
    expect(finding.p50).toBeCloseTo(1, 2);
    expect(finding.p90).toBeCloseTo(1.25, 2);
    expect(Math.abs(finding.chance!.value - 0.9)).toBeLessThan(0.01);
    expect(finding.errors!.p90).toBeLessThan(0.02);
    expect(finding.shares).toMatchObject([{ path: 'factors.bedLoss' }]);
    expect(finding.shares[0]!.share).toBeGreaterThan(0.98);
    const [measurement] = study.measurements;
    expect(measurement).toMatchObject({ path: 'factors.bedLoss', exactly: 'to 5 %' });
    expect(measurement!.how).toMatch(/energy meter/);
    // Wrong in a tenth now; read to a quarter of its deviation, wrong in some 4 %.
    expect(measurement!.verdicts.value).toBeGreaterThan(0.05);
    expect(measurement!.verdicts.value).toBeLessThan(0.08);
    expect(study.wrong).toBeCloseTo(0.1, 1);
    expect(study.bandError).toBeCloseTo(
      (finding.errors!.p10 + finding.errors!.p90) / 2 / (finding.p90! - finding.p10!),
      12,
    );
  });

  it('exact: shares of a sum of two inputs are those of their variances, alone and in total, and a product has more together', async () => {
    const sum = told(({ factors }) => 2 * factors.bedLoss + factors.plume, 3, 'sum');
    const product = told(({ factors }) => (factors.bedLoss - 1) * (factors.fanFlow - 1), 0, 'product');
    const study = await spread(source, { ...still, samples: 256, shares: 2, trades: [both(sum, product)] });
    // Deviations 0.25 and 0.2 at the 90th percentile, the first doubled.
    const all = 0.5 ** 2 + 0.2 ** 2;
    const ofSum = study.shares!.findings['heat/sum/cabinet/standing']!;
    const bed = ofSum.find(({ path }) => path === 'factors.bedLoss')!;
    expect(Math.abs(bed.first - 0.25 / all)).toBeLessThan(0.05);
    expect(Math.abs(bed.total - 0.25 / all)).toBeLessThan(0.05);
    expect(bed.totalBand[0]).toBeLessThan(0.25 / all);
    expect(bed.totalBand[1]).toBeGreaterThan(0.25 / all);
    const ofProduct = study.shares!.findings['heat/product/cabinet/standing']!;
    const together = ofProduct.find(({ path }) => path === 'factors.bedLoss')!;
    expect(Math.abs(together.first)).toBeLessThan(0.15);
    expect(together.total).toBeGreaterThan(0.7);
    expect(ofProduct.at(-1)!.label).toBe('all the rest');
    expect(study.findings.find(({ quantity }) => quantity === 'product')!.unexplained).toBeGreaterThan(0.8);
  });

  it('exact: an option that moves a value by the same amount everywhere is certainly better though the level is open', async () => {
    const trade = told(({ factors, room }) => factors.bedLoss - 0.1 * room.airChangesPerHour, 0.95);
    const given = sourceOf(TEXT.replace('cabinet:', 'room: { air-changes: 0.5 /h }\ncabinet:'));
    const study = await spread(given, { days: [], samples: 128, trades: [trade] });
    const airy = study.differences.find(({ option }) => option === 'airy')!;
    expect(airy.band.p10).toBeCloseTo(-0.05, 9);
    expect(airy.band.p90).toBeCloseTo(-0.05, 9);
    expect(airy).toMatchObject({ better: { value: 1 }, worse: { value: 0 } });
    expect(airy.kept.value).toBeGreaterThan(airy.keptBefore.value);
    expect(study.orders).toMatchObject({ open: 1, certain: 1 });
    const [asItStands, same, option] = study.options;
    expect(asItStands).not.toHaveProperty('fewer');
    expect(option!.fewer!.value).toBeCloseTo(airy.kept.value - airy.keptBefore.value, 9);
    expect(same!.more!.value).toBe(0);
    expect(study.differences.some(({ option: of }) => of === 'same')).toBe(false);
  });

  it('exact: the chance that all limits are kept is that of the tighter one when both hang on one input', async () => {
    const trades = [
      both(
        told(({ factors }) => factors.bedLoss, 1, 'one'),
        told(({ factors }) => factors.bedLoss, 1.25, 'two'),
      ),
    ];
    const { options } = await spread(source, { ...still, samples: 256, trades });
    expect(options[0]!.meetsAll!.value).toBeCloseTo(0.5, 1);
    expect(options[0]!.broken!.value).toBeCloseTo(0.6, 1);
  });

  it('property: the same seed gives the same study, another one another; each block of samples is even by itself', async () => {
    const trades = [told(({ factors }) => factors.bedLoss, 1)];
    const one = await spread(source, { ...still, samples: 32, trades });
    expect(await spread(source, { ...still, samples: 32, trades })).toEqual(one);
    expect(await spread(source, { ...still, samples: 32, seed: 2, trades })).not.toEqual(one);
    const [column] = [...evenShares(['a'], 8 * BLOCKS, 1).values()];
    const strata = (values: readonly number[], count: number) => new Set(values.map((u) => Math.floor(count * u))).size;
    expect(strata(column!, 64)).toBe(64);
    for (let block = 0; block < BLOCKS; block += 1) expect(strata(column!.slice(8 * block, 8 * block + 8), 8)).toBe(8);
  });

  it('limit: stopped half way it tells of the samples that ran, and none at all gives nominal values alone', async () => {
    const trades = [told(({ factors }) => factors.bedLoss, 1)];
    let done = 0;
    const study = await spread(source, {
      ...still,
      samples: 64,
      shares: 3,
      trades,
      progress: () => {
        done += 1;
      },
      stop: () => done >= 24,
    });
    expect(study).toMatchObject({ stopped: true, samples: { asked: 64, ran: 24 } });
    expect(study).not.toHaveProperty('shares');
    expect(Math.abs(study.findings.find((each) => each.id === id)!.chance!.value - 0.5)).toBeLessThan(0.15);
    const none = await spread(source, { ...still, samples: 0, trades });
    expect(none.findings.find((each) => each.id === id)).toMatchObject({ value: 1, verdict: 'holds', shares: [] });
    expect(none).toMatchObject({ measurements: [], wrong: 0 });
  });

  it('limit: a sample that cannot be run is left out, and said', async () => {
    const trades = [told(({ factors }) => factors.bedLoss, 1)];
    const evaluate = evaluateHere(source, trades);
    let at = 0;
    const study = await spread(source, {
      ...still,
      samples: 32,
      trades,
      evaluate: async (variants, hooks) =>
        (await evaluate(variants, hooks)).map((outcome) => {
          at += 1;
          return at % 10 === 0 ? { values: {}, limits: {}, unknown: [], fault: 'the network is torn' } : outcome;
        }),
    });
    expect(study.samples).toEqual({ asked: 32, ran: 29, faults: ['the network is torn'] });
  });

  it('cross: inputs that are exchanged in one set of runs give what each gives alone', async () => {
    const heat = told(({ factors }) => factors.bedLoss, 1, 'made-up');
    const structure: Trade = {
      id: 'structure',
      title: 'made up',
      standing: (cabinet) =>
        told(({ structure: { boards } }) => boards['plywood']!.along / 1e10, 0.8, 'along').standing!(cabinet).map(
          (measure) => ({
            ...measure,
            trade: 'structure',
          }),
        ),
    };
    const packed = await spread(source, { ...still, samples: 64, shares: 1, trades: [heat, structure] });
    const [set] = packed.shares!.sets;
    expect(set!.map(({ path }) => path).sort()).toEqual(['factors.bedLoss', 'structure.boards.plywood.along']);
    const alone = await spread(source, { ...still, samples: 64, shares: 1, trades: [heat] });
    const share = (study: typeof packed) => study.shares!.findings[id]!.find(({ path }) => path === 'factors.bedLoss')!;
    expect(share(packed)).toEqual(share(alone));
  });

  it('draws options, open verdicts and measurements, as well-formed SVG and the same each time', async () => {
    const trade = told(({ factors, room }) => factors.bedLoss - 0.1 * room.airChangesPerHour, 0.95);
    const study = await spread(source, { days: [], samples: 64, trades: [trade] });
    const picture = spreadPicture(study, 'a <made-up> cabinet');
    expect(picture).toContain('a &lt;made-up&gt; cabinet: how sure');
    expect(picture).toContain('kept in ');
    expect(picture).toContain('read to 5 %');
    expect(picture.match(/<(?!\/)[a-z]+(?![^>]*\/>)/g)!.length).toBe(picture.match(/<\/[a-z]+>/g)!.length);
    expect(spreadPicture(study, 'a <made-up> cabinet')).toBe(picture);
    expect(picture).not.toMatch(/NaN|undefined/);
  });
});
