import { z } from 'zod';

export const paperSchema = z.enum(['letter', 'a4']);
export type Paper = z.infer<typeof paperSchema>;

/** ANSI/ASME Y14.1 size A, and ISO 216 (both from memory). */
export const paperSizes: Readonly<Record<Paper, { widthMm: number; heightMm: number }>> = {
  letter: { widthMm: 215.9, heightMm: 279.4 },
  a4: { widthMm: 210, heightMm: 297 },
};

/** Where offices have Letter paper: CLDR's `paperSize` of these regions (from memory). */
const LETTER_REGIONS = new Set([
  'BZ',
  'CA',
  'CL',
  'CO',
  'CR',
  'GT',
  'MX',
  'NI',
  'PA',
  'PH',
  'PR',
  'SV',
  'US',
  'VE',
]);

/** @param locale BCP 47; without a region, the likely one of its language */
export function usualPaper(locale: string): Paper {
  const region = new Intl.Locale(locale).maximize().region ?? '';
  return LETTER_REGIONS.has(region) ? 'letter' : 'a4';
}
