import { z } from 'zod';

const isKnown = (check: () => unknown): boolean => {
  try {
    check();
    return true;
  } catch {
    return false;
  }
};

/** Whose marks numbers and dates have, and whose days they are, for what is written on the machine's side. */
export const regionSchema = z.object({
  /** BCP 47: "en-US". */
  locale: z
    .string()
    .max(80)
    .refine((locale) => isKnown(() => Intl.getCanonicalLocales(locale))),
  /** IANA: "America/Chicago". */
  timeZone: z
    .string()
    .max(80)
    .refine((timeZone) => isKnown(() => new Intl.DateTimeFormat('en', { timeZone }))),
});
export type Region = z.infer<typeof regionSchema>;
