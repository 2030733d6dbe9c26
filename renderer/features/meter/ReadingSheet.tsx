import { useState } from 'react';
import type { MeterState, OfferedCharacteristic } from '../../../shared-core/contract/meter.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { octetsOfFormat } from '../../../shared-core/gatt/value.ts';
import { UNKNOWN_BASIS } from '../../../shared-core/wood/moisture/correction.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { Bytes } from './Bytes.tsx';
import { DescribeForm } from './DescribeForm.tsx';
import { Fact } from './Fact.tsx';
import { formatName } from './formats.ts';

/** How the meter's bytes become a number: as it describes itself or as a person set it up, and the bytes themselves. */
export function ReadingSheet({ state }: { state: MeterState }) {
  const [describing, setDescribing] = useState(false);
  const { say } = useWords();
  const { description } = state;
  const isNeeded = state.phase === 'needs-description';
  const isRead = ({ serviceUuid, characteristicUuid }: OfferedCharacteristic) =>
    description?.serviceUuid === serviceUuid && description.characteristicUuid === characteristicUuid;
  return (
    <Sheet title={say('meter.reading.title')}>
      {state.description && <DescriptionFacts description={state.description} />}
      {state.remarks.map((remark) => (
        <Banner key={remark.code} kind="caution">
          {say(remark)}
        </Banner>
      ))}
      <DataTable
        name={say('meter.offered.caption')}
        caption={say('meter.offered.caption')}
        rows={state.characteristics}
        keyOf={({ serviceUuid, characteristicUuid }) => `${serviceUuid} ${characteristicUuid}`}
        columns={[
          {
            id: 'characteristic',
            head: say('meter.offered.characteristic'),
            cell: ({ characteristicUuid }) => <code translate="no">{characteristicUuid}</code>,
            below: (offered) => (
              <>
                {say('meter.offered.service')} <code translate="no">{offered.serviceUuid}</code>{' '}
                {isRead(offered) && <strong className="bytes-mark">{say('meter.offered.read')}</strong>}
              </>
            ),
          },
          {
            id: 'description',
            head: say('meter.offered.description'),
            cell: ({ userDescription }) => <span translate="no">{userDescription ?? '–'}</span>,
          },
          {
            id: 'sends',
            head: say('meter.offered.sends'),
            cell: ({ canNotify }) => say(canNotify ? 'meter.offered.sends-yes' : 'meter.offered.sends-no'),
          },
          {
            id: 'bytes',
            head: say('meter.offered.bytes'),
            cell: (offered) =>
              offered.lastBytesHex === null ? (
                say('meter.offered.bytes-none')
              ) : (
                <Bytes
                  hex={offered.lastBytesHex}
                  from={description && isRead(offered) ? description.layout.byteOffset : 0}
                  count={description && isRead(offered) ? octetsOfFormat(description.layout.format) : 0}
                />
              ),
          },
        ]}
      />
      {describing || isNeeded ? (
        <DescribeForm state={state} onDone={() => setDescribing(false)} />
      ) : (
        <Actions>
          <Button onClick={() => setDescribing(true)}>{say('meter.reading.set-up')}</Button>
        </Actions>
      )}
    </Sheet>
  );
}

function DescriptionFacts({ description }: { description: MeterDescription }) {
  const { say, formats } = useWords();
  const { layout, unit, basis, range, origin } = description;
  const { curveId, tempC } = basis ?? UNKNOWN_BASIS;
  const basisFacts = { speciesName: resistanceCurves.get(curveId)?.name ?? curveId, basisTempC: tempC };
  return (
    <>
      <p>{say(origin === 'self-described' ? 'meter.reading.self-described' : 'meter.reading.by-hand')}</p>
      <dl className="meter-facts">
        <Fact name={say('meter.reading.format')}>{say(formatName(layout.format))}</Fact>
        {layout.byteOffset > 0 && (
          <Fact name={say('meter.reading.first-byte')}>{formats.number(layout.byteOffset)}</Fact>
        )}
        {layout.exponent !== 0 && (
          <Fact name={say('meter.reading.power')}>{formats.number(layout.exponent)}</Fact>
        )}
        {layout.scale !== 1 && <Fact name={say('meter.reading.times')}>{formats.raw(layout.scale)}</Fact>}
        {layout.offset !== 0 && <Fact name={say('meter.reading.plus')}>{formats.raw(layout.offset)}</Fact>}
        <Fact name={say('meter.reading.unit')}>
          {say(unit === 'pct' ? 'meter.reading.unit-pct' : 'meter.reading.unit-ohm')}
        </Fact>
        <Fact name={say('meter.reading.range')}>
          {unit === 'pct'
            ? say('meter.reading.range-pct', { rawLowest: range.min, rawHighestPct: range.max })
            : say('meter.reading.range-ohm', { rawLowestOhm: range.min, rawHighestOhm: range.max })}
        </Fact>
        {unit === 'pct' && (
          <Fact name={say('meter.reading.basis')}>
            {say(basis ? 'meter.reading.basis-at' : 'meter.reading.basis-assumed', basisFacts)}
          </Fact>
        )}
      </dl>
    </>
  );
}
