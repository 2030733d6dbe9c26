/** A line that begins so sums up others. Common practice, no source. */
const TOTALS =
  /^((averages?|avg|(sub|grand )?totals?|mittelwert|durchschnitt|summe|gesamt|keskiarvo|yhteensä|summa|medel(värde)?|totalt|média|soma|promedio|suma|moyenne|somme)(?!\p{L})|(mean|sum|min|max|count)$)/iu;

/** Whether a cell says that its line sums up others: "Total", "Average of stack 3". */
export const isTotal = (text: string): boolean => TOTALS.test(text);
