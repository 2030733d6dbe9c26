import { useState } from 'react';
import type { MeterState, OfferedCharacteristic } from '../../../shared-core/contract/meter.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { octetsOfFormat } from '../../../shared-core/gatt/value.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { temperatureText } from '../../../shared-core/units/temperature.ts';
import type { MeterBasis } from '../../../shared-core/wood/moisture/corrected.ts';
import { UNKNOWN_BASIS } from '../../../shared-core/wood/moisture/correction.ts';
import { resistanceCurves } from '../../../shared-core/wood/species/catalogue.ts';
import { Actions, Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Screen.tsx';
import { useUnits } from '../../stores/settings.ts';
import { Bytes } from './Bytes.tsx';
import { DescribeForm } from './DescribeForm.tsx';
import { formatWords } from './formats.ts';

/** How the meter's bytes become a number: what it said of itself or what a person mapped, and the bytes themselves. */
export function ReadingSheet({ state }: { state: MeterState }) {
  const [describing, setDescribing] = useState(false);
  const isNeeded = state.phase === 'needs-description';
  return (
    <Sheet title="How its bytes are read">
      {state.description && <DescriptionWords description={state.description} />}
      <table className="table bytes-table">
        <caption>What the meter offers, and the newest bytes of each</caption>
        <thead>
          <tr>
            <th scope="col">Characteristic</th>
            <th scope="col">Its own words</th>
            <th scope="col">Sends by itself</th>
            <th scope="col">Newest bytes</th>
          </tr>
        </thead>
        <tbody>
          {state.characteristics.map((each) => (
            <CharacteristicRow
              key={`${each.serviceUuid} ${each.characteristicUuid}`}
              offered={each}
              description={state.description}
            />
          ))}
        </tbody>
      </table>
      {describing || isNeeded ? (
        <DescribeForm state={state} onDone={() => setDescribing(false)} />
      ) : (
        <Actions>
          <Button onClick={() => setDescribing(true)}>Describe it by hand</Button>
        </Actions>
      )}
    </Sheet>
  );
}

function DescriptionWords({ description }: { description: MeterDescription }) {
  const units = useUnits();
  const { layout, unit, basis, range, origin } = description;
  const unitWord = unit === 'pct' ? '% moisture content' : 'ohms';
  return (
    <p>
      {origin === 'self-described' ? 'The meter says of itself: ' : 'Mapped by hand: '}
      {formatWords(layout.format)}
      {layout.byteOffset > 0 && `, from byte ${layout.byteOffset}`}
      {layout.exponent !== 0 && `, × 10^${layout.exponent}`}
      {layout.scale !== 1 && `, × ${layout.scale}`}
      {layout.offset !== 0 && `, + ${layout.offset}`}, in {unitWord}, from {range.min} to {range.max}.{' '}
      {unit === 'pct' &&
        `${basis ? 'Its scale was made for' : 'It does not say what its scale was made for; taken is'} ${basisWords(basis ?? UNKNOWN_BASIS, units)}.`}
    </p>
  );
}

function basisWords({ curveId, tempC }: MeterBasis, units: DisplayUnits): string {
  return `${resistanceCurves.get(curveId)?.name ?? curveId} at ${temperatureText(tempC, units)}`;
}

function CharacteristicRow({
  offered,
  description,
}: {
  offered: OfferedCharacteristic;
  description: MeterDescription | null;
}) {
  const isRead =
    description?.characteristicUuid === offered.characteristicUuid &&
    description.serviceUuid === offered.serviceUuid;
  return (
    <tr className={isRead ? 'bytes-read' : ''}>
      <th scope="row">
        <code>{offered.characteristicUuid}</code>
        <small>
          in service <code>{offered.serviceUuid}</code>
        </small>
        {isRead && <strong className="bytes-mark">◀ this is read</strong>}
      </th>
      <td>{offered.userDescription ?? '–'}</td>
      <td>{offered.canNotify ? 'yes' : 'no'}</td>
      <td>
        {offered.lastBytesHex === null ? (
          'none yet'
        ) : (
          <Bytes
            hex={offered.lastBytesHex}
            from={isRead ? description.layout.byteOffset : 0}
            count={isRead ? octetsOfFormat(description.layout.format) : 0}
          />
        )}
      </td>
    </tr>
  );
}
