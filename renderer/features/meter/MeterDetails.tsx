import type { MeterState, OfferedCharacteristic } from '../../../shared-core/contract/meter.ts';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import { isFrom } from '../../../shared-core/gatt/source.ts';
import { placeOf } from '../../../shared-core/gatt/value.ts';
import { DataTable } from '../../ui/DataTable.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { Bytes, isIn } from './Bytes.tsx';
import { layoutName } from './formats.ts';

/** Bytes, numbers and counters, for whoever sets a meter up by hand. */
export function MeterDetails({ state }: { state: MeterState }) {
  const { say } = useWords();
  return (
    <Unfold words={say('meter.details')}>
      <div className="column">
        {state.description && <Reading layout={state.description.value} />}
        <Counts counts={state.counts} />
        <Offered state={state} />
      </div>
    </Unfold>
  );
}

/** How its bytes become a number. */
function Reading({ layout }: { layout: Layout }) {
  const { say, formats } = useWords();
  const { kind, exponent, scale, offset } = layout;
  const byteOrder = kind === 'text' ? undefined : layout.byteOrder;
  return (
    <Facts
      of={[
        [say('meter.reading.format'), say(layoutName(layout))],
        kind === 'bits'
          ? [say('meter.reading.first-bit'), formats.number(layout.firstBit)]
          : [
              say('meter.reading.first-byte'),
              layout.byteOffset > 0 ? formats.number(layout.byteOffset) : null,
            ],
        [say('meter.reading.nth'), kind === 'text' && layout.nth > 1 ? formats.number(layout.nth) : null],
        [say('meter.reading.byte-order'), byteOrder ? say(`meter.reading.${byteOrder}`) : null],
        [say('meter.reading.power'), exponent === 0 ? null : formats.number(exponent)],
        [say('meter.reading.times'), scale === 1 ? null : formats.raw(scale)],
        [say('meter.reading.plus'), offset === 0 ? null : formats.raw(offset)],
      ]}
    />
  );
}

/** That every notification is accounted for. */
function Counts({ counts }: { counts: MeterState['counts'] }) {
  const { say, formats } = useWords();
  return (
    <>
      <Facts
        of={[
          [say('meter.live.received'), formats.number(counts.received)],
          [say('meter.live.decoded'), formats.number(counts.decoded)],
          [say('meter.live.no-reading'), formats.number(counts.noReading)],
          [say('meter.live.other'), counts.other === 0 ? null : formats.number(counts.other)],
          [say('meter.live.refused'), formats.number(counts.refused)],
        ]}
      />
      {counts.lastRefusal && <p>{say('meter.live.last-refused', { why: counts.lastRefusal })}</p>}
    </>
  );
}

function Offered({ state: { description, characteristics } }: { state: MeterState }) {
  const { say } = useWords();
  const isRead = ({ serviceUuid, characteristicUuid }: OfferedCharacteristic) =>
    description !== null &&
    isFrom(description.source, { kind: 'characteristic', serviceUuid, characteristicUuid });
  return (
    <DataTable
      name={say('meter.offered.caption')}
      caption={say('meter.offered.caption')}
      rows={characteristics}
      keyOf={({ serviceUuid, characteristicUuid }) => `${serviceUuid} ${characteristicUuid}`}
      columns={[
        {
          id: 'characteristic',
          head: say('meter.offered.characteristic'),
          cell: ({ characteristicUuid }) => <code translate="no">{characteristicUuid}</code>,
          below: (offered) => (
            <>
              {say('meter.offered.service')} <code translate="no">{offered.serviceUuid}</code>{' '}
              {isRead(offered) && <strong>{say('meter.offered.read')}</strong>}
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
                marked={description && isRead(offered) ? isIn(placeOf(description.value)) : () => false}
              />
            ),
        },
      ]}
    />
  );
}
