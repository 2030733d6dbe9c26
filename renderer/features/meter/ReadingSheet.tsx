import { useState } from 'react';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { bridge } from '../../data/bridge.ts';
import { askMeter } from '../../stores/meter.ts';
import { useWatching } from '../../stores/watching.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { DescribeForm } from './DescribeForm.tsx';
import { MeterDetails } from './MeterDetails.tsx';
import { MeterElsewhere } from './MeterElsewhere.tsx';
import { NewMeterFile } from './NewMeterFile.tsx';
import { WatchForm } from './WatchForm.tsx';

/** How the meter's values are read: as it describes itself or as a person set it up; its bytes behind Details. */
export function ReadingSheet({ state }: { state: MeterState }) {
  /** From what it is set up by hand, null for nothing; undefined while it is not. */
  const [byHand, setByHand] = useState<MeterDescription | null | undefined>();
  const before = useWatching((watching) => watching.before);
  const { say } = useWords();
  const { description } = state;
  const isUnknown = state.phase === 'needs-description';

  async function watchAgain(): Promise<void> {
    if (await askMeter(bridge().command('meter.watch', {}))) useWatching.setState({ before: description });
  }

  const otherWays = (
    <>
      {before !== null && (
        <Button onClick={() => void askMeter(bridge().command('meter.describe', before))}>
          {say('watch.cancel')}
        </Button>
      )}
      <NewMeterFile />
    </>
  );
  return (
    <Sheet title={say(isUnknown ? 'meter.reading.title-new' : 'meter.reading.title')}>
      {description && <Scale description={description} />}
      {state.remarks.map((remark) => (
        <Banner key={remark.code} kind="caution">
          {say(remark)}
        </Banner>
      ))}
      {byHand !== undefined ? (
        <DescribeForm key={state.deviceId} state={state} from={byHand} onDone={() => setByHand(undefined)} />
      ) : isUnknown && state.heldBy === 'this-window' ? (
        <WatchForm key={state.deviceId} state={state} onByHand={setByHand}>
          {otherWays}
        </WatchForm>
      ) : isUnknown ? (
        <>
          <MeterElsewhere />
          <Actions>{otherWays}</Actions>
        </>
      ) : (
        <Actions>
          {state.kind === 'bluetooth' && <Button onClick={watchAgain}>{say('watch.title')}</Button>}
          <Button onClick={() => setByHand(description)}>{say('meter.reading.set-up')}</Button>
        </Actions>
      )}
      <MeterDetails state={state} />
    </Sheet>
  );
}

/** Its unit, and what it can show. */
function Scale({ description: { unit, range, origin, fields } }: { description: MeterDescription }) {
  const { say, formats } = useWords();
  const beside = [
    ...(fields.hold ? [say('meter.reading.hold')] : []),
    ...(fields.species ? [say('meter.reading.species')] : []),
    ...(fields.tempC ? [say('meter.reading.temperature')] : []),
    ...(fields.batteryPct ? [say('meter.reading.battery')] : []),
  ];
  return (
    <>
      <p>{say(origin === 'self-described' ? 'meter.reading.self-described' : 'meter.reading.by-hand')}</p>
      <Facts
        of={[
          [
            say('meter.reading.unit'),
            say(unit === 'pct' ? 'meter.reading.unit-pct' : 'meter.reading.unit-ohm'),
          ],
          [
            say('meter.reading.range'),
            unit === 'pct'
              ? say('meter.reading.range-pct', { rawLowest: range.min, rawHighestPct: range.max })
              : say('meter.reading.range-ohm', { rawLowestOhm: range.min, rawHighestOhm: range.max }),
          ],
          [say('meter.reading.beside'), beside.length === 0 ? null : formats.list(beside)],
        ]}
      />
    </>
  );
}
