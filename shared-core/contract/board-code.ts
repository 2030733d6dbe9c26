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
