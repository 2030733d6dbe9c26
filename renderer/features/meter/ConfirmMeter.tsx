import type { ReactNode } from 'react';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { bytesOfHex } from '../../../shared-core/gatt/bytes-of-hex.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import { isFrom } from '../../../shared-core/gatt/source.ts';
import { bridge } from '../../data/bridge.ts';
import { askMeter, showMeter } from '../../stores/meter.ts';
import { attempt, tellDone, tellUndoable } from '../../stores/notices.ts';
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
 * Asks which meter it is, where it may be a known one with a new address, and then what its display shows, where that may
 * be another number than before. Nothing where there is nothing to confirm.
 *
 * @param otherwise  the way on where its display shows no number that is offered
 */
export function ConfirmMeter({ state, otherwise }: { state: MeterState; otherwise: ReactNode }) {
  const { deviceId, description, phase, toConfirm } = state;
  if (deviceId === null || description === null || toConfirm === null || phase !== 'live') return null;
  return toConfirm.what === 'meter' ? (
    <WhichMeter deviceId={deviceId} sameAs={toConfirm.sameAs} ownName={toConfirm.ownName} />
  ) : (
    <WhatItShows state={state} description={description} before={toConfirm.before} otherwise={otherwise} />
  );
}

type SameAs = Extract<MeterState['toConfirm'], { what: 'meter' }>['sameAs'];

/** Never answered by itself: two meters of one make have one name. */
function WhichMeter({
  deviceId,
  sameAs,
  ownName,
}: {
  deviceId: string;
  sameAs: SameAs;
  ownName: string | null;
}) {
  const { say } = useWords();

  const [only, ...others] = sameAs;
  const isOne = others.length === 0;

  async function recognize(meterId: number, meterName: string): Promise<void> {
    const done = await attempt(bridge().command('meters.recognize', { meterId, deviceId }));
    if (done)
      tellUndoable(
        ownName === null || meterId !== only?.meterId
          ? say('meter.same.done', { meterName })
          : say('meter.same.renamed', { meterName: ownName }),
        (work) => bridge().command('acts.undo', { act: done.act, work }),
      );
  }
  async function another(): Promise<void> {
    if (await askMeter(bridge().command('meter.isAnother', { deviceId })))
      tellDone(say('meter.same.is-another'));
  }

  const choices = (
    <>
      {sameAs.map(({ meterId, meterName }) => (
        <Button key={meterId} kind={isOne ? 'main' : undefined} onClick={() => recognize(meterId, meterName)}>
          {isOne ? say('meter.same.it-is') : <span translate="no">{meterName}</span>}
        </Button>
      ))}
      <Button onClick={another}>{say('meter.same.another')}</Button>
    </>
  );
  return (
    <Banner kind="caution" actions={choices}>
      <strong>
        {ownName !== null
          ? say('meter.confirm.changed')
          : only && isOne
            ? say('meter.same.one', { meterName: only.meterName })
            : say('meter.same.several')}
      </strong>{' '}
      {ownName !== null && only
        ? say(isOne ? 'meter.same.ask-renamed' : 'meter.same.ask-renamed-which', {
            meterName: only.meterName,
            ownName,
          })
        : say(isOne ? 'meter.same.ask' : 'meter.same.ask-which')}{' '}
      {say('meter.confirm.not-saved')}
    </Banner>
  );
}

/**
 * Asks what the display of a meter shows that is not as it was: the number read now, or the one read as before. One
 * press answers, and its readings are saved again.
 */
function WhatItShows({
  state,
  description,
  before,
  otherwise,
}: {
  state: MeterState;
  description: MeterDescription;
  before: MeterDescription | null;
  otherwise: ReactNode;
}) {
  const { say, formats } = useWords();
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
