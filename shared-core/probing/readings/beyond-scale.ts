/** What a meter shows, and a person writes, where it has no number to show. Common practice, no source. */
const NO_NUMBER =
  /^(o\.?l\.?|over(load|[ -]?range)?|out of range|hi(gh)?|lo(w)?|err(or)?|wet|too wet|märkä|nass|molhado)\.?!?$/iu;

/** Whether a text says that the meter showed no number: "OL", "wet". */
export const isWithoutNumber = (text: string): boolean => NO_NUMBER.test(text.trim());

/** Whether a text says that the meter could not show less: "<6", "under 6", "6-". */
export const isBelowScale = (text: string): boolean =>
  /^\s*(?:[<≤]=?|(?:under|below|less than)(?=[\s\d]))\s*\d|^\s*\d[\d.,]*\s*%?\s*[-−]$/iu.test(text);

/** Before a number: the meter could not show more. */
const BEFORE = /^\s*(?:[>≥]=?|(?:over|above|more than)(?=[\s\d]))\s*/iu;
/** The same behind it; "14 + 2" is another thing. */
const BEHIND = /^([^\p{L}\d]*\d[\d.,]*\s*%?)\s*\+(?!\s*\d)/u;

/**
 * A value as a person writes it whose meter could not show more: ">28", "30+", "over 30".
 *
 * @returns `text` without what says so, and whether it was there
 */
export function withoutAbove(text: string): { text: string; isAbove: boolean } {
  const plain = text.replace(BEFORE, '').replace(BEHIND, '$1');
  // A mark without a number means nothing.
  const isAbove = plain !== text && /^[^\p{L}\d]*\d/u.test(plain);
  return isAbove ? { text: plain, isAbove } : { text, isAbove };
}

/**
 * Whether the meter showed only that it is more than a value. Another value, to which that one is corrected, it showed.
 *
 * @param raw       the value as it is now
 * @param savedRaw  as it was saved
 * @param mark      true: more than what was saved; a number: more than that, to which it was corrected
 */
export const isMoreThan = (raw: number, savedRaw: number, mark: boolean | number): boolean =>
  mark === true ? raw === savedRaw : mark === raw;
