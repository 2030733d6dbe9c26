/**
 * Species and uses have their names beside their records. Lists go by these, and so they still name an entry whose record
 * the disk damaged. An index of a name within the record refused every edit of such an entry.
 */
const named = (table: string): string => `
  ALTER TABLE ${table} ADD COLUMN name TEXT;
  UPDATE ${table} SET name = iif(json_valid(record), record ->> 'name', NULL);`;

export const sql = `
  DROP INDEX species_by_name;
  ${named('species')}
  ${named('end_use')}
  CREATE INDEX species_by_name ON species (name, id);
`;
