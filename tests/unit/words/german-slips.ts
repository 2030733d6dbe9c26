/** What German text of ours never has, in the catalog and in the guide. */

export const withoutUmlauts = (text: string): boolean =>
  /fuer|ueber|koenn|muess|moegl|groess|waehl|waehr|loesch|aender|oeffn|zurueck|schliess|gemaess|mässig|\b(dass?z|daß|muß|läßt|heisst|weiss|gross|grosse|grösse|aussen|ausser|ausserdem|heiss|spass|mass|strasse)\b/iu.test(
    text,
  );

/** Quotation marks, dashes and dots of another language. */
export const withForeignMarks = (text: string): boolean =>
  /["„“”»«]|—| - |\.\.\.|[^\s\u00A0(]…|'/u.test(text.replace(/„[^„“”"]*“/gu, ''));

export const withDecimalPoint = (text: string): boolean => /\d\.(?!\d{3}(?!\d))\d(?!\d*-)/.test(text);

/** DIN 5008: between a number and its unit is a space that does not break. */
export const withLooseUnit = (text: string): boolean =>
  /\d ?(%|°[CF]?|mm|cm|m|km|g|kg|MB|GB|kΩ|MΩ|GΩ|s|h)(?!\p{L})/u.test(text);

export const withStraySpace = (text: string): boolean => /^\s|\s$| {2}| [,.;:?!]/.test(text);
