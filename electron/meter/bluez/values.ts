/** What came over the bus is checked before it is used: another version of BlueZ may send another type. */
export const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');
export const isOn = (value: unknown): boolean => value === true;
export const numberOf = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? value : null;
export const bytesOf = (value: unknown): Buffer | null => (Buffer.isBuffer(value) ? value : null);
export const textsOf = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];
