import { useMeter } from '../../stores/meter.ts';
import { Loading, Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { ConnectSheet } from './ConnectSheet.tsx';
import { LiveSheet } from './LiveSheet.tsx';
import { ReadingSheet } from './ReadingSheet.tsx';
import './meter.css';

/** Connect a meter, see that it sends, set up how its bytes are read. */
export function MeterScreen() {
  const state = useMeter((meter) => meter.state);
  const { say } = useWords();
  return (
    <Screen title={say('meter.title')} lead={say('meter.lead')}>
      {state === null ? (
        <Loading />
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
