import type { ColumnRole } from '../contract/import.ts';
import { exchange as german } from '../words/de/exchange.ts';
import { exchange as english } from '../words/en/exchange.ts';

type Exchange = Readonly<Record<keyof typeof english, string>>;
type Head = Extract<keyof Exchange, `csv.${string}`>;

/** What the columns of an exported table are here. What was figured from readings, and not read, is none. */
const ROLES: Partial<Record<Head, ColumnRole>> = {
  'csv.board': 'code',
  'csv.stack': 'stack',
  'csv.place': 'place',
  'csv.species': 'species',
  'csv.thickness': 'thickness',
  'csv.width': 'width',
  'csv.length': 'length',
  'csv.sawn-on': 'sawn-on',
  'csv.log': 'log',
  'csv.layer': 'layer',
  'csv.note': 'note',
  'csv.taken-at': 'day',
  'csv.shown': 'reading',
  'csv.shown-unit': 'reading-unit',
  'csv.depth': 'depth',
  'csv.wood-temperature': 'wood-temp',
  'csv.why-excluded': 'excluded',
};
/** Every table of boards or readings that was exported has the first two, and one of the others. */
const ALWAYS: readonly Head[] = ['csv.board', 'csv.uuid'];
const EITHER: readonly Head[] = ['csv.shown', 'csv.archived-at'];

/** A header without its unit: "Thickness (in)" is "Thickness". */
const withoutUnit = (head: string): string => head.replace(/ \([^)]*\)$/, '');

/** The roles of the columns of a table that Pintally exported, in any of its languages; null of any other table. */
export const ownRoles = (header: readonly string[]): ColumnRole[] | null =>
  rolesIn(english, header) ?? rolesIn(german, header);

function rolesIn(exchange: Exchange, header: readonly string[]): ColumnRole[] | null {
  const heads = header.map(withoutUnit);
  const has = (head: Head) => heads.includes(exchange[head]);
  if (!ALWAYS.every(has) || !EITHER.some(has)) return null;
  const roleOf = new Map(Object.entries(ROLES).map(([head, role]) => [exchange[head as Head], role]));
  return heads.map((head) => roleOf.get(head) ?? 'unused');
}
