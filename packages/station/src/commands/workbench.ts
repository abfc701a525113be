// stillair workbench [PATH]: opens the page that a person works at, and keeps it open until it is stopped.

import type { ExitCode, Io } from '../io.ts';

export interface WorkbenchOptions {
  readonly port?: number;
}

export async function workbench(path: string | undefined, { port }: WorkbenchOptions, io: Io): Promise<ExitCode> {
  const served = await io.serve({ path, port });
  if (!served.ok) {
    io.err(`stillair workbench: ${served.problem}`);
    return 2;
  }
  io.out(`The workbench is open at ${served.address}`);
  if (path === undefined) io.out('It shows the examples. To keep what you change: stillair workbench FILE');
  io.out('Ctrl-C closes it.');
  await stopped(io.stop);
  await served.close();
  return 0;
}

function stopped(stop: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (stop.aborted) resolve();
    else stop.addEventListener('abort', () => resolve(), { once: true });
  });
}
