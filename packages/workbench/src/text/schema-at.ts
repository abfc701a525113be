// What may stand at a place of the file, from its published JSON Schema.

export interface JsonSchema {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly additionalProperties?: JsonSchema | boolean;
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, JsonSchema>>;
}

/** Every shape that the value at a path may have. */
export function schemasAt(root: JsonSchema, path: readonly string[]): readonly JsonSchema[] {
  let now = branchesOf(root, root);
  for (const key of path) {
    now = now.flatMap((schema) => {
      const own = schema.properties?.[key];
      if (own !== undefined) return branchesOf(root, own);
      if (schema.items !== undefined && /^\d+$/.test(key)) return branchesOf(root, schema.items);
      const { additionalProperties: others } = schema;
      return typeof others === 'object' ? branchesOf(root, others) : [];
    });
  }
  return now;
}

function branchesOf(root: JsonSchema, schema: JsonSchema): readonly JsonSchema[] {
  if (schema.$ref !== undefined) {
    const name = /^#\/\$defs\/(.+)$/.exec(schema.$ref)?.[1];
    const found = name === undefined ? undefined : root.$defs?.[name];
    return found === undefined ? [] : branchesOf(root, found);
  }
  if (schema.anyOf === undefined) return [schema];
  const { description } = schema;
  return schema.anyOf.flatMap((branch) =>
    branchesOf(
      root,
      description === undefined || branch.description !== undefined ? branch : { ...branch, description },
    ),
  );
}

/** Keys that may stand in the map at a path, with what they mean. */
export function keysAt(root: JsonSchema, path: readonly string[]): ReadonlyMap<string, string> {
  const keys = new Map<string, string>();
  for (const { properties } of schemasAt(root, path))
    for (const [key, schema] of Object.entries(properties ?? {}))
      if (!keys.has(key)) keys.set(key, aboutOf(root, schema));
  return keys;
}

/** Words that may stand as the value at a path. */
export function wordsAt(root: JsonSchema, path: readonly string[]): readonly string[] {
  const words = schemasAt(root, path).flatMap((schema) => [
    ...(schema.enum ?? []),
    ...(schema.const === undefined ? [] : [schema.const]),
  ]);
  return [...new Set(words.map(String))];
}

/** What stands at a path, in words. */
export function meaningAt(root: JsonSchema, path: readonly string[]): string {
  return [...new Set(schemasAt(root, path).flatMap(({ description }) => description ?? []))].join('; or ');
}

function aboutOf(root: JsonSchema, schema: JsonSchema): string {
  return branchesOf(root, schema).find(({ description }) => description !== undefined)?.description ?? '';
}
