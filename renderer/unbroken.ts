/** U+2060, which no eye sees: a line does not break there. */
const WORD_JOINER = '\u2060';

/**
 * A text whose ranges of percentages stay on one line. A browser would break "6–8%" after its dash.
 * @example unbroken('Target 6–8%.') // "Target 6–\u20608%."
 */
export const unbroken = (text: string): string =>
  text.replace(/(?<=\d)–(?=\d[\d.,]*\s?%)/g, `–${WORD_JOINER}`);
