import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { ReadSource } from '../judge/judge.ts';
import { measureDays, numbersOfDays } from '../judge/pipeline.ts';
import { airQuality } from '../trades/air-quality/air-quality.ts';
import { parseDate } from '../units/calendar.ts';
import { type CareStudy, care } from './care.ts';
import { kindEdits, kindsOf, restEdits } from './job-kinds.ts';
import { readDiary } from './read-diary.ts';
import { livesOn, stageUseOf } from './stage-use.ts';

const hall = readFileSync(join(import.meta.dirname, '../../../station/fixtures/hall.yaml'), 'utf8');
const today = parseDate('2026-11-28') as number;

function sourceOf(text: string): ReadSource {
  const answer = readCabinet('hall.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints[0]!.what);
  return { file: 'hall.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}
const source = sourceOf(hall);

const diaryOf = (text: string) => {
  const answer = readDiary('hall.diary.yaml', `diary: 1\nbegan: 2024-11-28\n${text}`, source.cabinet, today);
  if (!answer.ok) throw new Error(answer.complaints[0]!.what);
  return answer.diary;
};

const neglected = diaryOf(`done:
  - { on: 2026-11-01, part: bay lower, did: cleaned }
jobs:
  - { on: 2024-12-01 to 2026-11-27, job: bracket, times: 300 }
`);

describe('care of a cabinet', () => {
  let study: CareStudy;
  beforeAll(async () => {
    study = await care(source, { today, diary: neglected, samples: 0 });
  }, 60_000);

  it('exact: what was done three weeks ago is due in two months, what never was counts from the beginning', () => {
    const of = (id: string) => study.tasks.find((task) => task.id === id)!;
    expect(of('bay lower clean')).toMatchObject({ last: '2026-11-01', p50: '2027-02-01', verdict: 'holds' });
    expect(of('bay upper clean')).toMatchObject({ p50: '2025-02-28', verdict: 'fails' });
    expect(of('filter exhaust change')).toMatchObject({ verdict: 'fails', p50: '2025-11-28' });
    expect(study.load!.machines['left']! / 3600).toBeCloseTo(1800, 6);
  });

  it('property: overdue comes before what is due later, soonest first', () => {
    const dates = study.tasks.flatMap(({ p50 }) => p50 ?? []);
    expect(dates).toEqual([...dates].sort((a, b) => a.localeCompare(b)));
  });

  it('property: a filter two years overdue is four times its clean loss, and the findings that hang on its flow are worse', () => {
    const filter = study.tasks.find(({ id }) => id === 'filter exhaust change')!;
    expect(filter.ageing!.edits).toEqual([{ set: { 'air.exhaust.parts.0.loading': '200 %' } }]);
    expect(filter.effects!.map(({ id }) => id)).toContain('airflow/fan-share/air.exhaust/usual');
    expect(filter.effects!.every(({ was, verdict }) => was !== 'fails' || verdict === 'fails')).toBe(true);
  });

  it('property: all that is overdue is run together too: what one worn part breaks, another may relieve', () => {
    const ids = study.together!.map(({ id }) => id);
    expect(study.tasks.filter(({ ageing }) => ageing !== undefined).length).toBeGreaterThan(1);
    expect(ids).toContain('airflow/fan-share/air.exhaust/usual');
  });

  it('limit: without a diary everything is unknown, and nothing is run for it', async () => {
    const nothing = await care(source, { today, samples: 0 });
    expect(nothing.tasks.every(({ verdict, missing }) => verdict === 'unknown' && missing !== undefined)).toBe(true);
    expect(nothing.began).toBeUndefined();
    expect(nothing.together).toBeUndefined();
  });

  it('limit: stopped at once it says so', async () => {
    expect(await care(source, { today, diary: neglected, samples: 0, stop: () => true })).toMatchObject({
      stopped: true,
    });
  });
});

describe('what a job takes of a filter’s life', () => {
  it('cross: a day with its only job and the time between uses as much as the air-quality trade says of that day', () => {
    const [kind] = kindsOf(diaryOf('jobs: [{ on: 2026-01-05, job: bracket, start: 9:00 }]\n').jobs, source.cabinet);
    const numbers = (edits: Parameters<typeof readCabinet>[2]) => {
      const answer = readCabinet('hall.yaml', hall, edits);
      if (!answer.ok) throw new Error(answer.complaints[0]!.what);
      return numbersOfDays(answer.cabinet, [airQuality]);
    };
    const use = stageUseOf([
      { day: 'usual', numbers: numbers(restEdits('usual')) },
      { kind: kind!, day: 'usual', numbers: numbers(kindEdits(kind!)) },
    ]);
    const [run] = diaryOf('jobs: [{ on: 2026-01-05, job: bracket }]\n').jobs;
    const used = use.ofRest['air.exhaust.0']! + use.ofRun(run!)['air.exhaust.0']!;
    const [life] = Object.values(livesOn(numbersOfDays(source.cabinet, [airQuality]), 'usual'));
    expect(used).toBeCloseTo(86_400 / life!, 9);
    expect(
      measureDays(source.cabinet, [airQuality]).measures.get('air-quality/filter-life/air.exhaust.0/usual')!.value,
    ).toBe(life);
  });
});
