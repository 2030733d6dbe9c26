import { crc32 } from 'node:zlib';

/** What of a reading can never change, as the file holds it. */
export interface ReadingAsTaken {
  uuid: string;
  roundId: number;
  boardId: number;
  spotIndex: number | null;
  /** JSON. */
  spot: string;
  raw: number;
  unit: string;
  how: string;
  /** 1 or 0; null for a typed value. */
  settled: number | null;
  woodTempC: number | null;
  meterProfileId: number | null;
  takenAt: string;
}

/**
 * A checksum that tells when the disk changed a reading: CRC-32 (that of zip and PNG) over the UTF-8 bytes of a JSON
 * array of the fields, in the order of `ReadingAsTaken`. Every change of up to 32 neighboring bits changes it.
 */
export function readingChecksum(reading: ReadingAsTaken): number {
  return crc32(
    JSON.stringify([
      reading.uuid,
      reading.roundId,
      reading.boardId,
      reading.spotIndex,
      reading.spot,
      reading.raw,
      reading.unit,
      reading.how,
      reading.settled,
      reading.woodTempC,
      reading.meterProfileId,
      reading.takenAt,
    ]),
  );
}
