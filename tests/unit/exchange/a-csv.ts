import { BYTE_ORDER_MARK } from '../../../shared-core/exchange/csv.ts';

/** The rows of a CSV file by their heads, as RFC 4180 reads it. */
export function rowsOf(csv: string): Record<string, string>[] {
  if (!csv.startsWith(BYTE_ORDER_MARK)) throw new Error('It begins without a byte order mark.');
  const rows: string[][] = [[]];
  const cell = /("(?:[^"]|"")*"|[^",\r\n]*)(,|\r\n|$)/gy;
  cell.lastIndex = BYTE_ORDER_MARK.length;
  while (cell.lastIndex < csv.length) {
    const [, text = '', end] = cell.exec(csv) ?? [];
    rows.at(-1)!.push(text.startsWith('"') ? text.slice(1, -1).replaceAll('""', '"') : text);
    if (end === '\r\n') rows.push([]);
  }
  const [head = [], ...body] = rows.filter((row) => row.length > 0);
  return body.map((row) => Object.fromEntries(head.map((name, at) => [name, row[at] ?? ''])));
}
