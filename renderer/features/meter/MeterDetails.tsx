import type { MeterState, OfferedCharacteristic } from '../../../shared-core/contract/meter.ts';
import type { ValueLayout } from '../../../shared-core/gatt/meter-description.ts';
import { octetsOfFormat } from '../../../shared-core/gatt/value.ts';
import { DataTable } from '../../ui/DataTable.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { Bytes } from './Bytes.tsx';
import { Fact } from './Fact.tsx';
import { formatName } from './formats.ts';

/** Bytes, numbers and counters, for whoever sets a meter up by hand. */
export function MeterDetails({ state }: { state: MeterState }) {
  const { say } = useWords();
  return (
    <Unfold words={say('meter.details')}>
      <div className="meter-details">
        {state.description && <Layout layout={state.description.layout} />}
        <Counts counts={state.counts} />
        <Offered state={state} />
      </div>
    </Unfold>
  );
}

/** How its bytes become a number. */
function Layout({ layout }: { layout: ValueLayout }) {
  const { say, formats } = useWords();
  return (
    <dl className="meter-facts">
      <Fact name={say('meter.reading.format')}>{say(formatName(layout.format))}</Fact>
      {layout.byteOffset > 0 && (
        <Fact name={say('meter.reading.first-byte')}>{formats.number(layout.byteOffset)}</Fact>
      )}
      {layout.byteOrder && (
        <Fact name={say('meter.reading.byte-order')}>{say(`meter.reading.${layout.byteOrder}`)}</Fact>
      )}
      {layout.exponent !== 0 && (
        <Fact name={say('meter.reading.power')}>{formats.number(layout.exponent)}</Fact>
      )}
      {layout.scale !== 1 && <Fact name={say('meter.reading.times')}>{formats.raw(layout.scale)}</Fact>}
      {layout.offset !== 0 && <Fact name={say('meter.reading.plus')}>{formats.raw(layout.offset)}</Fact>}
    </dl>
  );
}

/** That every notification is accounted for. */
function Counts({ counts }: { counts: MeterState['counts'] }) {
  const { say, formats } = useWords();
  return (
    <>
      <dl className="meter-facts">
        {(['received', 'decoded', 'noReading', 'refused'] as const).map((count) => (
          <Fact key={count} name={say(countNames[count])}>
            {formats.number(counts[count])}
          </Fact>
        ))}
      </dl>
      {counts.lastRefusal && <p>{say('meter.live.last-refused', { why: counts.lastRefusal })}</p>}
    </>
  );
}

const countNames = {
  received: 'meter.live.received',
  decoded: 'meter.live.decoded',
  noReading: 'meter.live.no-reading',
  refused: 'meter.live.refused',
} as const;

function Offered({ state: { description, characteristics } }: { state: MeterState }) {
  const { say } = useWords();
  const isRead = ({ serviceUuid, characteristicUuid }: OfferedCharacteristic) =>
    description?.serviceUuid === serviceUuid && description.characteristicUuid === characteristicUuid;
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
  );
}
