import { useState } from 'react';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { bridge } from '../../data/bridge.ts';
import { askMeter } from '../../stores/meter.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { DescribeForm } from './DescribeForm.tsx';
import { MeterDetails } from './MeterDetails.tsx';
import { MeterElsewhere } from './MeterElsewhere.tsx';
import { NewMeterFile } from './NewMeterFile.tsx';
import { WatchForm } from './WatchForm.tsx';

/** How the meter's values are read: as it describes itself or as a person set it up; its bytes behind Details. */
export function ReadingSheet({ state }: { state: MeterState }) {
  const [describing, setDescribing] = useState(false);
  /** As it was read before it was to be described again. */
  const [before, setBefore] = useState<MeterDescription | null>(null);
  const { say } = useWords();
  const { description } = state;
  return (
    <Sheet title={say('meter.reading.title')}>
      {description && <Scale description={description} />}
      {state.remarks.map((remark) => (
        <Banner key={remark.code} kind="caution">
          {say(remark)}
        </Banner>
      ))}
      {state.phase === 'needs-description' ? (
        <>
          {state.heldBy === 'this-window' ? (
            <WatchForm key={state.deviceId} state={state} />
          ) : (
            <MeterElsewhere />
          )}
          {before !== null && (
            <Actions>
              <Button onClick={() => void askMeter(bridge().command('meter.describe', before))}>
                {say('watch.cancel')}
              </Button>
            </Actions>
          )}
          <Unfold words={say('meter.reading.set-up')}>
            <DescribeForm state={state} onDone={() => setDescribing(false)} />
          </Unfold>
        </>
      ) : describing ? (
        <DescribeForm state={state} onDone={() => setDescribing(false)} />
      ) : (
        <Actions>
          {state.kind === 'bluetooth' && (
            <Button
              onClick={() => {
                setBefore(description);
                void askMeter(bridge().command('meter.watch', {}));
              }}
            >
              {say('watch.title')}
            </Button>
          )}
          <Button onClick={() => setDescribing(true)}>{say('meter.reading.set-up')}</Button>
        </Actions>
      )}
      {state.phase === 'needs-description' && (
        <Actions>
          <NewMeterFile />
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
