import type { ReactNode } from 'react';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { bytesOfHex } from '../../../shared-core/gatt/bytes-of-hex.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import { isFrom } from '../../../shared-core/gatt/source.ts';
import { bridge } from '../../data/bridge.ts';
import { showMeter } from '../../stores/meter.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';

/** What a meter shows now, read by a description; null with the pins out. */
function shownBy(description: MeterDescription, { characteristics }: MeterState): number | null {
  const read = characteristics.find(({ serviceUuid, characteristicUuid }) =>
    isFrom(description.source, { kind: 'characteristic', serviceUuid, characteristicUuid }),
  );
  if (!read?.lastBytesHex) return null;
  const decoded = decodePacket(bytesOfHex(read.lastBytesHex), description).value;
  return decoded?.ok && decoded.value > 0 ? decoded.value : null;
}

/**
 * Asks what the display of a meter shows that is not as it was: the number read now, or the one read as before. One
 * press answers, and its readings are saved again. Nothing where there is nothing to confirm.
 *
 * @param otherwise  the way on where its display shows neither
 */
export function ConfirmMeter({ state, otherwise }: { state: MeterState; otherwise: ReactNode }) {
  const { say, formats } = useWords();
  const { description, toConfirm } = state;
  if (description === null || toConfirm === null || state.phase !== 'live') return null;
  const { before } = toConfirm;
  const now = shownBy(description, state);
  const asBefore = before && shownBy(before, state);

  async function confirm(shown: MeterDescription): Promise<void> {
    const described = await attempt(bridge().command('meter.describe', shown));
    if (!described) return;
    showMeter(described);
    tellDone(say('meter.confirm.done'));
  }

  const choices = (
    <>
      {now !== null && (
        <Button kind="main" onClick={() => confirm(description)}>
          {rawText(now, description.unit, formats)}
        </Button>
      )}
      {before && asBefore !== null && (
        <Button onClick={() => confirm(before)}>
          {say('meter.confirm.as-before', { shown: rawText(asBefore, before.unit, formats) })}
        </Button>
      )}
      {otherwise}
    </>
  );
  return (
    <Banner kind="caution" actions={choices}>
      <strong>{say('meter.confirm.changed')}</strong> {say('meter.confirm.not-saved')}{' '}
      {say(now === null ? 'meter.confirm.push-in' : 'meter.confirm.ask')}
    </Banner>
  );
}
