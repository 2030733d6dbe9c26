/** U+2060, which no eye sees: a line does not break there. */
const WORD_JOINER = '\u2060';

/**
 * A text whose ranges of percentages and whose inches with a fraction stay on one line. A browser would break "6–8%" after its dash,
 * and "1 1/8 in" before its fraction or its unit.
 * @example unbroken('Target 6–8%.') // "Target 6–\u20608%."
 */
export const unbroken = (text: string): string =>
  text
    .replace(/(?<=\d)–(?=\d[\d.,]*\s?%)/g, `–${WORD_JOINER}`)
    .replace(/(?<=\d) (?=\d{1,2}\/(?:2|4|8|16)(?!\d))/g, '\u00A0')
    .replace(/(?<=\d\/(?:2|4|8|16)) (?=in\b)/g, '\u00A0');
