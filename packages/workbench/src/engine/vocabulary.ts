// Words for the editor: the schema, the names of the catalogue, and the ids of the file.

import schema from 'virtual:file-schema';
import { type Cabinet, catalogueData } from '@stillair/engine';
import type { JsonSchema } from '../text/schema-at.ts';
import type { Vocabulary } from './protocol.ts';

export function vocabulary(cabinet: Cabinet | undefined): Vocabulary {
  const kinds = (group: string): string[] =>
    Object.keys((catalogueData as Record<string, Record<string, unknown>>)[group] ?? {});
  const ids = (part: object | undefined): string[] => Object.keys(part ?? {});
  return {
    schema: schema as JsonSchema,
    names: {
      'machines.kind': kinds('machines'),
      'heats.kind': kinds('heats'),
      fan: kinds('fans'),
      filter: kinds('filters'),
      carbon: kinds('carbons'),
      seal: kinds('seals'),
      material: [...new Set([...kinds('materials'), ...ids(cabinet?.materials)])],
      'made-of': kinds('boards').map((board) => `${board} `),
      bay: ids(cabinet?.bays),
      bays: ids(cabinet?.bays),
      from: ['room', 'outdoors', ...ids(cabinet?.bays)],
      to: ['room', 'outdoors', ...ids(cabinet?.bays)],
      machine: ids(cabinet?.machines),
      door: ids(cabinet?.doors),
      thermostat: ids(cabinet?.sensors),
      stages: ids(cabinet?.sensors),
      proportional: ids(cabinet?.sensors),
    },
  };
}
