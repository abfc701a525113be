import { expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { runProgram } from '../program.ts';

it('says where the workbench is open, and closes it when stopped', async () => {
  const person = new AbortController();
  const io = fakeIo({ stop: person.signal });
  let status: number | undefined;
  const running = runProgram(['workbench', 'shelf', '--port', '4300'], io).then((code) => {
    status = code;
  });
  await expect.poll(() => io.printed.out).toBe('The workbench is open at http://127.0.0.1:4180/\nCtrl-C closes it.\n');
  expect({ status, ...io.served }).toEqual({ status: undefined, asked: [{ path: 'shelf', port: 4300 }], closed: 0 });
  person.abort();
  await running;
  expect({ status, closed: io.served.closed }).toEqual({ status: 0, closed: 1 });
});

it('tells how to keep changes when only the examples are shown', async () => {
  const io = fakeIo({ stop: AbortSignal.abort() });
  expect(await runProgram(['workbench'], io)).toBe(0);
  expect(io.printed.out).toContain('It shows the examples. To keep what you change: stillair workbench FILE\n');
  expect(io.served.asked).toEqual([{ path: undefined, port: undefined }]);
});

it('exits 2 with the reason when it cannot be opened', async () => {
  const io = fakeIo({ deaf: 'cannot open shelf: there is no such file' });
  expect(await runProgram(['workbench', 'shelf'], io)).toBe(2);
  expect(io.printed).toMatchObject({ out: '', err: 'stillair workbench: cannot open shelf: there is no such file\n' });
});

it.each(['-1', '65536', 'x', '1.5'])('exits 2 on port %s', async (port) => {
  const io = fakeIo();
  expect(await runProgram(['workbench', '--port', port], io)).toBe(2);
  expect(io.served.asked).toEqual([]);
});
