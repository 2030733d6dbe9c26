const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const RADIX = 36;

/**
 * A character that goes behind letters and digits, so that one wrong or two exchanged characters are noticed.
 *
 * @param text  of 0–9 and A–Z; others are passed over
 * Source: ISO/IEC 7064, MOD 37,36 (as implemented by the npm package @konfirm/iso7064, whose code was read).
 * @example checkCharacter('A12425GABC1234002') // 'M'
 */
export function checkCharacter(text: string): string {
  const sum = Array.from(text)
    .map((character) => ALPHABET.indexOf(character))
    .filter((value) => value >= 0)
    .reduce((carry, value) => {
      const next = ((carry % (RADIX + 1)) + value) % RADIX || RADIX;
      return next * 2;
    }, RADIX);
  return ALPHABET.charAt((RADIX + 1 - (sum % (RADIX + 1))) % RADIX);
}
