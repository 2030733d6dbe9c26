/**
 * The board ID that continues a numbering: its last number one higher, as wide as it was; an ID without a number gets one.
 *
 * @example followingCode('OAK-09') // 'OAK-10'
 */
export function followingCode(code: string): string {
  const [, stem, digits] = /^(.*?)(\d+)$/.exec(code) ?? [];
  if (stem === undefined || digits === undefined) return `${code.slice(0, 12)}-02`;
  return `${stem}${String(Number(digits) + 1).padStart(digits.length, '0')}`;
}

/** As long as an ID can be. */
export const LONGEST_CODE = 16;

/**
 * The ID of a piece cut from a board.
 *
 * @param number  of the piece, from 1
 * @example pieceCode('A12', 2) // 'A12-2'
 */
export function pieceCode(code: string, number: number): string {
  const end = `-${number}`;
  return `${code.slice(0, LONGEST_CODE - end.length)}${end}`;
}

/** As many digits as numbers of boards are padded to. */
const MOST_DIGITS = 5;

/**
 * The IDs that a person may have written for one: with and without its hyphen, its number with and without zeros before it.
 *
 * @example likeCodes('A-07') // ['A-7', 'A7', 'A-07', 'A07', 'A-007', …]
 */
export function likeCodes(code: string): string[] {
  const [, stem = code, digits] = /^(.*?)-?(\d+)$/.exec(code) ?? [];
  if (digits === undefined) return [code.replaceAll('-', '')];
  const number = digits.replace(/^0+(?=\d)/, '');
  return Array.from({ length: MOST_DIGITS }, (_, width) => number.padStart(width + 1, '0'))
    .filter((padded, index, all) => padded !== all[index - 1])
    .flatMap((padded) => (stem === '' ? [padded] : [`${stem}-${padded}`, `${stem}${padded}`]));
}

/** Letters that are no Latin letter with a mark on it, as the Latin alphabet writes them. */
const LATIN: Readonly<Record<string, string>> = {
  ...{ Æ: 'AE', Ø: 'OE', Œ: 'OE', ẞ: 'SS', Ð: 'D', Đ: 'D', Þ: 'TH', Ł: 'L', Ħ: 'H', Ŋ: 'NG' },
  // Greek, ISO 843, without diacritics.
  ...{ Α: 'A', Β: 'V', Γ: 'G', Δ: 'D', Ε: 'E', Ζ: 'Z', Η: 'I', Θ: 'TH', Ι: 'I', Κ: 'K', Λ: 'L', Μ: 'M' },
  ...{ Ν: 'N', Ξ: 'X', Ο: 'O', Π: 'P', Ρ: 'R', Σ: 'S', Τ: 'T', Υ: 'Y', Φ: 'F', Χ: 'CH', Ψ: 'PS', Ω: 'O' },
  // Cyrillic, as in passports (ICAO Doc 9303, from memory).
  ...{
    А: 'A',
    Б: 'B',
    В: 'V',
    Г: 'G',
    Ґ: 'G',
    Д: 'D',
    Е: 'E',
    Є: 'IE',
    Ж: 'ZH',
    З: 'Z',
    И: 'I',
    І: 'I',
    К: 'K',
  },
  ...{
    Л: 'L',
    М: 'M',
    Н: 'N',
    О: 'O',
    П: 'P',
    Р: 'R',
    С: 'S',
    Т: 'T',
    У: 'U',
    Ф: 'F',
    Х: 'KH',
    Ц: 'TS',
    Ч: 'CH',
  },
  ...{
    Ш: 'SH',
    Щ: 'SHCH',
    Ъ: '',
    Ы: 'Y',
    Ь: '',
    Э: 'E',
    Ю: 'IU',
    Я: 'IA',
    Ђ: 'DJ',
    Ј: 'J',
    Љ: 'LJ',
    Њ: 'NJ',
    Ћ: 'C',
    Џ: 'DZ',
  },
};

/** What board IDs begin with where no name gives letters that they may have. */
const NEUTRAL = 'B';

/** As long as leaves room for a hyphen and a number. */
const LONGEST_STEM = 8;

/**
 * The ID of a stack's first board. It begins with the first word with two letters or more in the first of the names that has
 * one, in Latin letters; "B" where none has, as in a script without an alphabet.
 *
 * @param names  of the stack, of its species
 * @example firstCode('Ærø-Eiche') // 'AEROE-01'
 */
export function firstCode(...names: string[]): string {
  const words = names.flatMap((name) => latin(name).match(/[A-Z0-9]+/g) ?? []);
  const stem = words.find((word) => /[A-Z].*[A-Z]/.test(word)) ?? NEUTRAL;
  return `${stem.slice(0, LONGEST_STEM)}-01`;
}

/** A name in capital Latin letters. */
export function latin(name: string): string {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toUpperCase();
  return [...plain].map((letter) => LATIN[letter] ?? letter).join('');
}
