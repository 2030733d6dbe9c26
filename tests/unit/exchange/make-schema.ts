/**
 * Writes the published JSON Schema of an export of everything, from the schemas that the program itself reads it by.
 * Run: `npx node tests/unit/exchange/make-schema.ts`.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { exportJsonSchema } from '../../../shared-core/exchange/yard-tables.ts';

export const schemaFile = join(
  import.meta.dirname,
  '../../../shared-core/exchange/pintally-yard.schema.json',
);
export const schemaText = (): string => `${JSON.stringify(exportJsonSchema(), null, 2)}\n`;

if (import.meta.main) writeFileSync(schemaFile, schemaText());
