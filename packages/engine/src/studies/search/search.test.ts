import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../cabinet/cabinet.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { variantRunner } from '../../judge/variants.ts';
import { pointsIn } from '../../numerics/choice-space.ts';
import { lowestOf, tabulated } from '../../numerics/named-spaces.ts';
import { seek } from '../../numerics/seek.ts';
import { draught } from '../../trades/draught/draught.ts';
import { heat } from '../../trades/heat/heat.ts';
import { choicesOf, editsAt, spaceOf } from './choices.ts';
import { withFree } from './free-words.ts';
import { beyond, type SearchOutcome, searchRunner } from './run-search.ts';
import { brokenByAll, scored } from './scores.ts';
import { search } from './search.ts';

const text = (search: string): string => `stillair: 1
title: A box in the study
room: { size: 4 m x 3.5 m x 2.5 m, temperature: 21 °C }
cabinet: { inside: 600 mm x 600 mm x 800 mm, made-of: plywood 18 mm, door: glass 4 mm }
machines: { wren: { kind: moving bed 220, mass: 8 kg, stands-on: board } }
air:
  intake: { from: room, to: inside, hole: 60 mm round }
  exhaust: { from: inside, to: room, parts: [{ filter: pleated H13 150 mm }, { fan: axial 92 mm strong }] }
days: { usual: { jobs: { clip: { machine: wren, material: PETG, start: 9:00, for: 2 h } } } }
options: { larger: { set: { air.intake.hole: 100 mm round } }, bare: { remove: [air.exhaust.parts.0] } }
${search === '' ? '' : `search: ${search}\n`}`;

function read(search: string): ReadSource {
  const answer = readCabinet('box.yaml', text(search));
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'box.yaml', text: text(search), cabinet: answer.cabinet, origins: answer.origins };
}

const FEW =
  '{ options: [larger], free: { air.exhaust.parts.1.fan: [axial 92 mm quiet, axial 120 mm quiet], air.exhaust.parts.1.speed: { from: 60 %, to: 100 %, step: 40 % } } }';

describe('choices', () => {
  it('exact: the value as it stands is always among them, in its place when they lie in order', () => {
    const [fan, speed, larger] = choicesOf(read(FEW));
    expect(fan).toMatchObject({ base: 0, ordered: false, assumed: false });
    expect(fan!.values.map(({ says }) => says)).toEqual([
      'axial 92 mm strong',
      'axial 92 mm quiet',
      'axial 120 mm quiet',
    ]);
    expect(speed!.values.map(({ says }) => says)).toEqual(['100 %', '60 %']);
    expect(speed).toMatchObject({ base: 0, ordered: true });
    expect(larger).toMatchObject({ id: 'option larger', base: 0 });
    const holes = choicesOf(
      read('{ free: { air.intake.hole: { from: 40 mm round, to: 100 mm round, step: 20 mm } } }'),
    )[0]!;
    expect({ base: holes.base, ordered: holes.ordered }).toEqual({ base: 1, ordered: true });
  });

  it('exact: single values come before options, which may move what a path counts', () => {
    const source = read('{ options: [bare], free: { air.exhaust.parts.1.fan: [blower 97 mm] } }');
    const edits = editsAt(choicesOf(source), [1, 1]);
    expect(edits).toEqual([
      { set: { 'air.exhaust.parts.1.fan': 'blower 97 mm' } },
      { remove: ['air.exhaust.parts.0'] },
    ]);
    expect(readCabinet('box.yaml', source.text, edits).ok).toBe(true);
  });

  it('property: what is assumed when the file does not say is told as assumed, and every value can be read', () => {
    const source = read('');
    const choices = choicesOf(source);
    expect(choices.map(({ id }) => id)).toEqual([
      'air.intake.hole',
      'air.intake.blows',
      'air.exhaust.parts.0.filter',
      'air.exhaust.parts.1.fan',
      'air.exhaust.parts.1.speed',
      'option larger',
      'option bare',
    ]);
    expect(choices.every(({ assumed }) => assumed)).toBe(true);
    const faults = choices.flatMap(({ values }) =>
      values.flatMap(({ edits }) => {
        const answer = readCabinet('box.yaml', source.text, edits);
        return answer.ok ? [] : answer.complaints;
      }),
    );
    expect(faults).toEqual([]);
  });

  it('exact: words of a command line are written into the text, or complained of', () => {
    const freed = withFree(text(''), [
      'air.intake.hole=[60 mm round, 90 mm round]',
      'air.exhaust.parts.1.speed={ from: 50 %, to: 100 %, step: 25 % }',
    ]);
    const answer = 'text' in freed ? readCabinet('box.yaml', freed.text) : undefined;
    expect(answer?.ok === true && Object.keys(answer.cabinet.search!.free)).toEqual([
      'air.intake.hole',
      'air.exhaust.parts.1.speed',
    ]);
    for (const word of ['air.intake.hole', 'air.intake.hole=60 mm', '=[1]'])
      expect(withFree(text(''), [word])).toHaveProperty('problem');
  });
});

describe('scores', () => {
  const outcome = (broken: SearchOutcome['broken'], noise: number): SearchOutcome => ({
    broken,
    unknown: [],
    numbers: { 'sound/loudest/desk/usual': noise },
  });

  it('exact: by how much a limit is broken, in shares, tens of kelvin, tens of decibels, or logarithms', () => {
    const most = { id: 'x', kind: 'at-most', value: 2, source: '', standing: 'own' } as const;
    expect(beyond(most, 2, 'speed', false)).toBeUndefined();
    expect(beyond(most, 3, 'speed', false)).toBeCloseTo(0.5);
    expect(beyond(most, 7, 'temperature', false)).toBeCloseTo(0.5);
    expect(beyond(most, 7, 'sound-level', false)).toBeCloseTo(0.5);
    expect(beyond(most, 2 * Math.E, 'particle-concentration', true)).toBeCloseTo(1);
    expect(beyond({ ...most, kind: 'at-least' }, 1, 'speed', false)).toBeCloseTo(0.5);
  });

  it('exact: a limit that all break is no rule, but may not be broken further; one that any keeps is a rule for all', () => {
    const [a, b] = [
      { by: 0.5, weight: 1 },
      { by: 0.9, weight: 1 },
    ];
    const all = [outcome({ a, b }, 40), outcome({ a }, 38), outcome({ a: { by: 0.8, weight: 1 } }, 30)];
    expect(brokenByAll(all)).toEqual(['a']);
    expect(scored(all, ['quiet']).violations.map((value) => value > 0)).toEqual([true, false, true]);
    const kept = scored([...all, outcome({}, 50)], ['quiet']);
    expect(kept.givenUp).toEqual([]);
    expect(kept.scores.map(({ violation }) => violation > 0)).toEqual([true, true, true, false]);
  });
});

describe('a whole space of a cabinet', () => {
  it('exact: its best of 50,000 variants is found in fewer than 1,000 runs', async () => {
    const folder = join(import.meta.dirname, '../../../../../bench/spaces');
    const file = join(folder, 'small-box.yaml');
    const boxText = readFileSync(file, 'utf8');
    const answer = readCabinet(file, boxText);
    if (!answer.ok) throw new Error('the box cannot be read');
    const space = spaceOf(choicesOf({ file, text: boxText, ...answer }));
    const packed = gunzipSync(readFileSync(join(folder, 'small-box.ranks.gz')));
    const box = tabulated('small box', space, new Uint16Array(packed.buffer, packed.byteOffset, packed.length / 2));
    const lowest = lowestOf(box);
    const { runs } = await seek({
      space,
      most: 999,
      seed: 501,
      evaluate: (points) => Promise.resolve(points.map(box.cost)),
      score: (ranks) => ranks.map((rank) => ({ violation: 0, costs: [rank] })),
      enough: (all) => all.some(({ result }) => result === lowest.cost),
    });
    expect(pointsIn(space)).toBe(50_000);
    expect(runs.some(({ result }) => result === lowest.cost)).toBe(true);
  });
});

describe('a search of a cabinet', () => {
  it('cross: finds what trying every variant finds', async () => {
    const source = read(FEW);
    const study = await search(source, { wants: ['quiet'], samples: 0 });
    expect({ ran: study.ran, variants: study.variants, complete: study.complete }).toEqual({
      ran: 12,
      variants: 12,
      complete: true,
    });
    const run = variantRunner(source);
    const loudest = (edits: readonly Edit[]): number =>
      Math.max(
        ...Object.entries(run({ edits, inputs: {} }).values).flatMap(([id, value]) =>
          id.startsWith('sound/loudest/') ? [value] : [],
        ),
      );
    expect(study.winner!.comesTo.quiet).toBeCloseTo(loudest(study.winner!.edits), 9);
    const kept = study.cloud.filter(({ keeps }) => keeps).map(({ comesTo }) => comesTo.quiet!);
    // Half of what matters in noise may have been given for a simpler winner.
    expect(study.winner!.comesTo.quiet).toBeLessThan(Math.min(...kept) + 0.25);
    expect(study.undone.map(({ id }) => id)).toEqual(study.winner!.changes.map(({ id }) => id));
    expect(study.undone.filter(({ idle }) => idle)).toEqual([]);
  });

  it('property: no member of a front is better than another in every want', async () => {
    const { front, winner } = await search(read(FEW), {
      wants: ['still', 'cool'],
      samples: 0,
      trades: [heat, draught],
    });
    expect(front.length).toBeGreaterThan(1);
    for (const [at, { comesTo }] of front.slice(1).entries()) {
      expect(comesTo.still!).toBeGreaterThan(front[at]!.comesTo.still!);
      expect(comesTo.cool!).toBeLessThan(front[at]!.comesTo.cool!);
    }
    expect(front.map(({ edits }) => edits)).toContainEqual(winner!.edits);
  });

  it('property: with samples it says how surely; the same seed gives the same answer', async () => {
    const of = () => search(read(FEW), { wants: ['cool'], samples: 8, seed: 3 });
    const [one, two] = [await of(), await of()];
    expect(one.winner!.chance).toBeGreaterThanOrEqual(0);
    expect(one.base.chance).toBeLessThanOrEqual(1);
    expect(two).toEqual(one);
  });

  it('exact: a variant is left off at the first limit that it breaks, once the breach is no longer wanted', () => {
    const run = searchRunner(read(FEW));
    const whole = run({ edits: [], inputs: {} });
    const standing = Object.keys(whole.broken).filter((id) => id.endsWith('/standing'));
    expect(standing.length).toBeGreaterThan(0);
    expect(run({ edits: [], inputs: {}, givenUp: [] }).abandoned).toBe(true);
    expect(run({ edits: [], inputs: {}, givenUp: Object.keys(whole.broken) })).toEqual(whole);
  });

  it('exact: what was run before it was stopped is told', async () => {
    const study = await search(read(FEW), { wants: ['cool'], samples: 8, stop: () => true });
    expect(study.stopped).toBe(true);
    expect(study.winner).toBeUndefined();
  });
});
