/**
 * Writes the published JSON Schemas of an export of everything and of a meter's file, from the schemas that the program
 * itself reads them by.
 * Run: `npx node tests/unit/exchange/make-schema.ts`.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { meterJsonSchema } from '../../../shared-core/contract/meter-file.ts';
import { exportJsonSchema } from '../../../shared-core/exchange/yard-tables.ts';

const published = (name: string): string => join(import.meta.dirname, '../../../shared-core/exchange', name);

export const schemaFile = published('pintally-yard.schema.json');
export const schemaText = (): string => `${JSON.stringify(exportJsonSchema(), null, 2)}\n`;

export const meterSchemaFile = published('pintally-meter.schema.json');

if (import.meta.main) {
  writeFileSync(schemaFile, schemaText());
  writeFileSync(meterSchemaFile, `${JSON.stringify(meterJsonSchema(), null, 2)}\n`);
}
