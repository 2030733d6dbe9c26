import type { table as english } from '../en/table.ts';

export const table = {
  'table.columns': 'Spalten',
  'table.select-all': 'Alle auswählen',
  'table.select-row': '{rowName} auswählen',
  'table.row-coming': '…',
} satisfies Record<keyof typeof english, string>;
