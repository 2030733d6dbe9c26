import { z } from 'zod';

const recordSchema = z.record(z.string(), z.unknown());

/** What a text holds by a schema; undefined where it is no JSON, or another form. */
export function readJson<T>(schema: z.ZodType<T>, text: string): T | undefined {
  try {
    return schema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

/** The fields of a record that can be read, of a text that may be damaged. */
export function readFields<Shape extends z.ZodRawShape>(
  { shape }: z.ZodObject<Shape>,
  text: string,
): Partial<z.infer<z.ZodObject<Shape>>> {
  const given = readJson(recordSchema, text) ?? {};
  const readable = Object.entries(shape).flatMap(([field, schema]) => {
    const read = z.safeParse(schema, given[field]);
    return read.success ? [[field, read.data]] : [];
  });
  return Object.fromEntries(readable);
}

/** SQL for a value within JSON that may be damaged; null then. */
export const valueIn = (column: string, path: string): string =>
  `iif(json_valid(${column}), ${column} ->> '${path}', NULL)`;
