// stillair schema: the JSON Schema of cabinet files, for editors.

import { cabinetSchema } from '@stillair/engine';
import type { ExitCode, Io } from '../io.ts';

export async function schema(io: Io): Promise<ExitCode> {
  io.out(JSON.stringify(cabinetSchema(), null, 2));
  return 0;
}
