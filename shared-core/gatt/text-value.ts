import { message } from '../words/message.ts';
import { type DecodedValue, none, refused } from './decoded.ts';
import type { Letters, TextLayout } from './layout.ts';
import type { MeterDescription } from './meter-description.ts';

/**
 * What stands for a number: digits with a decimal point or comma, or what displays show in place of one, as dashes or
 * "OL" (common practice, no source).
 */
const SLOT =
  /(?<![\p{L}\p{N}.,])(?:[-_*?\u2010-\u2015\u2212]{2,}(?:[.,][-_*?\u2010-\u2015\u2212]+)?|[O0]\.?L(?![\p{L}\p{N}]))|((?<![\p{L}\p{N}])[+\u2212-])?([\d.,]*\d[\d.,]*)([eE][+-]?\d{1,3})?/gu;
/** What a display puts behind its number while its button is pressed; common practice, no source. */
const MARK = /^\s*(?:\p{Lu}|HOLD|Hold|hold)(?![\p{L}\p{N}])/u;
const UNIT = /^\s*(%|[kMG]?(?:\u03a9|\u2126|[oO]hms?)|(?:°\s?[CF]|[CF]|m?V)(?!\p{L}))/u;
const ohmsOfPrefix: Readonly<Record<string, number>> = { k: 1e3, M: 1e6, G: 1e9 };

interface Slot {
  /** Null where something else is shown in place of a number, or one that can be read two ways. */
  value: number | null;
  isAmbiguous: boolean;
  /** Where it begins and ends in the text. */
  start: number;
  end: number;
}

/**
 * The nth number of a text, in ohms where it has a prefix.
 * @param unit  that the number must be in, where its unit is behind it; undefined for a number that is no reading
 * @param isWhole  nothing but the number and its unit may be in the text
 */
export function readText(
  bytes: Uint8Array,
  { byteOffset, nth }: TextLayout,
  unit: MeterDescription['unit'] | undefined,
  isWhole: boolean,
): DecodedValue {
  const needed = byteOffset + 1;
  if (bytes.length < needed) {
    return refused(message('meter.value.bytes-missing', { sent: bytes.length, needed }));
  }
  const own = bytes.slice(byteOffset);
  const text = isWhole ? utf8Of(own) : textOf(own);
  if (text === undefined) return refused(message('meter.value.not-text'));
  const shown = printable(text);
  const slot = slotsOf(text)[nth - 1];
  // Whatever a meter's own word for none is ("Err", nothing at all), it holds no digit.
  if (slot === undefined)
    return (/\d/.test(text) ? refused : none)(message('meter.value.shows-none', { shown }));
  if (slot.isAmbiguous) return refused(message('meter.value.shows-ambiguous', { shown }));
  if (slot.value === null) return none(message('meter.value.shows-none', { shown }));
  const behind = text.slice(slot.end);
  const [ofUnit = '', unitText] = UNIT.exec(behind) ?? [];
  if (isWhole) {
    const rest = text.slice(0, slot.start) + behind.slice(ofUnit.length).replace(MARK, '');
    if (!/^\s*(?:MC|mc)?$/.test(rest)) return refused(message('meter.value.shows-none', { shown }));
  }
  if (unit === undefined || unitText === undefined) return { ok: true, value: slot.value };
  const isOhms = /[\u03a9\u2126]|ohm/iu.test(unitText);
  if (unit === 'pct' ? unitText !== '%' : !isOhms) {
    return refused(message('meter.value.shows-other-unit', { shown, unit }));
  }
  return { ok: true, value: slot.value * (ohmsOfPrefix[unitText[0]!] ?? 1) };
}

/** Where the numbers of a text are, and what they are. */
function slotsOf(text: string): Slot[] {
  return [...text.matchAll(SLOT)].flatMap((match) => {
    const [whole, sign = '', run, power = ''] = match;
    const start = match.index;
    const end = start + whole.length;
    if (run === undefined) return [{ value: null, isAmbiguous: false, start, end }];
    // "1,234" is a thousand to some and one and a bit to others.
    if (/^\d{1,3}(?:,\d{3})+(?:\.\d*)?$/.test(run)) return [{ value: null, isAmbiguous: true, start, end }];
    const isList = run.includes('.') || run.split(',').length > 2;
    const parts = isList ? run.split(',').filter((part) => part !== '') : [run];
    let at = start;
    return parts.map((part, index) => {
      at = text.indexOf(part, at);
      const isLast = index === parts.length - 1;
      const digits = `${index === 0 ? sign.replace('\u2212', '-') : ''}${part.replace(',', '.')}${isLast ? power : ''}`;
      const value = Number(digits);
      const slot = {
        value: Number.isNaN(value) ? null : value,
        isAmbiguous: Number.isNaN(value),
        start: index === 0 ? start : at,
        end: isLast ? end : at + part.length,
      };
      at += part.length;
      return slot;
    });
  });
}

/** How many numbers a text has, with what is shown in place of one. */
export const numbersInText = (bytes: Uint8Array): number => slotsOf(textOf(bytes)).length;

/** What a text has between its spaces and signs. */
const partsOf = (bytes: Uint8Array): readonly string[] => textOf(bytes).match(/[\p{L}\p{N}]+/gu) ?? [];

/** The words of a text that have no digit. */
export const wordsOf = (bytes: Uint8Array): string[] => partsOf(bytes).filter((part) => !/\p{N}/u.test(part));

/** Whether a text has this word, with no letter or digit beside it. */
export const hasWord = (bytes: Uint8Array, word: string): boolean => partsOf(bytes).includes(word);

/** The text that letters hold, safe to show; null where the packet ends before it. */
export function readLetters(bytes: Uint8Array, { byteOffset, octets }: Letters): string | null {
  const own = bytes.slice(byteOffset, byteOffset + octets);
  return own.length < octets ? null : printable(textOf(own));
}

/** @returns undefined where it is none */
function utf8Of(bytes: Uint8Array): string | undefined {
  let escaped = '';
  for (const byte of bytes) escaped += `%${byte.toString(16).padStart(2, '0')}`;
  try {
    // The language's own UTF-8 decoder: this core has no DOM to borrow one from.
    return trimmed(decodeURIComponent(escaped));
  } catch {
    return undefined;
  }
}

/** UTF-8; a degree sign is often sent as one byte (ISO 8859-1). */
const textOf = (bytes: Uint8Array): string =>
  utf8Of(bytes) ?? trimmed(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));

const trimmed = (text: string): string => text.replace(/\0+$/, '').trim();

/** Text from the air, made safe to put into a sentence: printable and short. */
function printable(text: string): string {
  const safe = text.replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, '·');
  return safe.length > 20 ? `${safe.slice(0, 20)}…` : safe;
}
