/** The bill of materials against the schema of CycloneDX 1.5, as its own library has it, and against itself. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { billOfMaterials } from '../../../electron/packing/bill-of-materials.ts';
import { nodeOf } from '../../../electron/packing/packages.ts';

const root = resolve(import.meta.dirname, '../../..');
const bill = billOfMaterials(root, nodeOf(root));

const schema = (name: string): object =>
  JSON.parse(
    readFileSync(
      join(root, `node_modules/@cyclonedx/cyclonedx-library/res/schema/${name}.SNAPSHOT.schema.json`),
      'utf8',
    ),
  );
/** They refer to each other by the names of their files. Formats, as of addresses, are not checked. */
const base = 'http://cyclonedx.org/schema';
const validate = new Ajv({ strict: false, validateFormats: false })
  .addSchema({ ...schema('spdx'), $id: `${base}/spdx.SNAPSHOT.schema.json` })
  .addSchema({ ...schema('jsf-0.82'), $id: `${base}/jsf-0.82.SNAPSHOT.schema.json` })
  .compile(schema('bom-1.5'));

test('the bill of materials is valid by the schema of CycloneDX 1.5', () => {
  validate(bill);
  expect(validate.errors).toBeNull();
});

test('the schema refuses an unknown type and a component listed twice', () => {
  const [first, ...others] = bill.components;
  expect(validate({ ...bill, components: [{ ...first, type: 'plank' }, ...others] })).toBe(false);
  expect(validate({ ...bill, components: [first, first] })).toBe(false);
});

test('the bill says what each component needs, and names nothing that it does not list', () => {
  const refs = new Set([
    bill.metadata.component['bom-ref'],
    ...bill.components.map((each) => each['bom-ref']),
  ]);
  expect(refs.size).toBe(bill.components.length + 1);
  expect(new Set(bill.dependencies.map(({ ref }) => ref))).toEqual(refs);
  expect(bill.dependencies.flatMap(({ dependsOn }) => dependsOn).filter((ref) => !refs.has(ref))).toEqual([]);
});
