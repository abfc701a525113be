// JSON Schema of the cabinet file, from the definition that reads it: for editors that complete keys and show their meaning.

import * as z from 'zod';
import { fileSchema } from './file-schema.ts';

/** Of draft 2020-12; keys that begin with `_` are allowed everywhere, as they are the person's own. */
export function cabinetSchema(): Readonly<Record<string, unknown>> {
  const schema = z.toJSONSchema(fileSchema(), {
    io: 'input',
    override: ({ jsonSchema }) => {
      if (jsonSchema.type === 'object') jsonSchema.patternProperties = { '^_': {} };
    },
  });
  return { title: 'Stillair cabinet file, version 1', ...schema };
}
