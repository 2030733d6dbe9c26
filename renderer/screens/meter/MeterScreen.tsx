import { Loading, Screen } from '../../parts/Screen.tsx';
import { useMeter } from '../../stores/meter.ts';
import { ConnectSheet } from './ConnectSheet.tsx';
import { LiveSheet } from './LiveSheet.tsx';
import { ReadingSheet } from './ReadingSheet.tsx';
import './meter.css';

/** Connect a meter, see that it sends, say how its bytes are read. */
export function MeterScreen() {
  const state = useMeter((meter) => meter.state);
  return (
    <Screen title="Meter" lead="Any Bluetooth pin meter that sends its value; or none, and values are typed.">
      {state === null ? (
        <Loading what="the meter’s state" />
      ) : (
        <>
          <ConnectSheet state={state} />
          {state.phase === 'live' && <LiveSheet state={state} />}
          {state.characteristics.length > 0 && <ReadingSheet state={state} />}
        </>
      )}
    </Screen>
  );
}
