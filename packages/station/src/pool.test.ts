import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { openPool } from './pool.ts';

const folder = mkdtempSync(join(tmpdir(), 'stillair-pool-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Adds what it was started with; a task below zero is a fault, task 99 never ends. The larger, the sooner it answers. */
const module = join(folder, 'adds.mjs');
writeFileSync(
  module,
  `import { parentPort, workerData } from 'node:worker_threads';
  parentPort.on('message', ({ id, task }) => {
    if (task === 99) return;
    const answer = task < 0 ? { id, fault: { message: 'below zero', stack: 'here' } } : { id, result: task + workerData };
    setTimeout(() => parentPort.postMessage(answer), Math.max(0, 20 - task));
  });`,
);

function pool(size: number, stop = new AbortController().signal) {
  return openPool<number, number>(pathToFileURL(module), size, 1000, stop);
}

it.each([1, 3])('property: %d workers give the results in the order of the tasks', async (size) => {
  const workers = pool(size);
  const counts: number[] = [];
  expect(await workers.run([0, 5, 19, 3, 12], (count) => counts.push(count))).toEqual([1000, 1005, 1019, 1003, 1012]);
  expect(counts).toEqual([1, 2, 3, 4, 5]);
  expect(await workers.run([1])).toEqual([1001]);
  await workers.close();
});

it('limit: no tasks, no wait', async () => {
  const workers = pool(2);
  expect(await workers.run([])).toEqual([]);
  await workers.close();
});

it('hands on the fault of a worker', async () => {
  const workers = pool(2);
  await expect(workers.run([1, -1, 2])).rejects.toThrow('below zero');
  await workers.close();
});

it('leaves at once when stopped, with what is done', async () => {
  const stopping = new AbortController();
  const workers = pool(1, stopping.signal);
  const running = workers.run([1, 99, 2], () => stopping.abort());
  expect(await running).toEqual([1001, undefined, undefined]);
  expect(await workers.run([1])).toEqual([undefined]);
  await workers.close();
});
