/**
 * The Bluetooth SIG's assigned numbers that a pin meter can use, as noble writes UUIDs (lower case, no hyphens).
 *
 * Sources: Bluetooth SIG, Assigned Numbers. Checked: the units 0x272A, 0x272F and 0x27AD in public transcriptions of
 * the SIG's list (trouble-host's generated constants, an open GATT unit table and its unit tests); the descriptors
 * 0x2904 and 0x2906 in the SIG's own GATT viewer text and a rendering of its XML. Characteristics are those
 * of the SIG's 16-bit UUID list (0x2A6F checked; the others from memory).
 */
export const serviceChangedUuid = '2a05';
export const batteryLevelUuid = '2a19';
/** The service of sensors of air, and its two values that matter here (`environment.ts`). */
export const environmentUuid = '181a';
export const temperatureUuid = '2a6e';
/** Humidity of air, uint16, 0.01 %. */
export const humidityUuid = '2a6f';

export const userDescriptionUuid = '2901';
export const presentationFormatUuid = '2904';
export const validRangeUuid = '2906';

/** Units of the presentation format, as its uint16 field holds them. */
export const ohmUnit = 0x272a;
export const percentageUnit = 0x27ad;

/** What a 16-bit UUID stands for: 0000xxxx-0000-1000-8000-00805f9b34fb (Core Specification, Vol 3 Part B 2.5.1). */
const baseUuidTail = '00001000800000805f9b34fb';

/**
 * One spelling for every UUID: lower case, no hyphens, 4 digits where the SIG assigned it, else 32.
 * @returns null when it is not a UUID
 */
export function plainUuid(uuid: string): string | null {
  const digits = uuid.toLowerCase().replaceAll('-', '');
  if (!/^[0-9a-f]+$/.test(digits)) return null;
  // Some stacks print 0x0A00 as "a00".
  if (digits.length <= 4) return digits.padStart(4, '0');
  if (digits.length === 8 && digits.startsWith('0000')) return digits.slice(4);
  if (digits.length !== 32) return null;
  return digits.startsWith('0000') && digits.endsWith(baseUuidTail) ? digits.slice(4, 8) : digits;
}
