/** What every table says of itself. */
export const table = {
  'table.columns': 'Columns',
  'table.select-all': 'Select all',
  'table.select-row': 'Select {rowName}',
  'table.row-coming': '…',
} as const;
