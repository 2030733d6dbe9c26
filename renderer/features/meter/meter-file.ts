import { Refusal } from '../../../shared-core/contract/answer.ts';
import {
  type MeterFile,
  MOST_METER_FILE_BYTES,
  meterFileText,
  readMeterFile,
} from '../../../shared-core/contract/meter-file.ts';
import type { MeterProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { download } from '../../data/download.ts';

/** What a file of the person's says of a meter. @throws Refusal */
export async function openMeterFile(picked: File): Promise<MeterFile> {
  const read =
    picked.size > MOST_METER_FILE_BYTES
      ? ({ ok: false, problem: message('meter-file.too-large') } as const)
      : readMeterFile(await picked.text().catch(() => ''));
  if (read.ok) return read.value;
  throw new Refusal(message('meter-file.refused', { fileName: picked.name, problem: read.problem }));
}

/** What is said once a file was used. @param profile  what the meter has of it now */
export const fileUsed = (file: MeterFile, profile: MeterProfile | null) =>
  JSON.stringify(file.profile?.scale) === JSON.stringify(profile?.scale) || file.profile === null
    ? ('meter-file.used' as const)
    : ('meter-file.used-but-species' as const);

export async function saveMeterFile(meterId: number, fileName: string): Promise<void> {
  const text = meterFileText(await bridge().query('meters.file', { meterId }));
  download(new Blob([text], { type: 'application/json' }), fileName);
}
