import { loadMeter, useMeter } from '../../stores/meter.ts';
import { Await } from '../../ui/Await.tsx';
import { Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { ConfirmMeter } from './ConfirmMeter.tsx';
import { ConnectSheet } from './ConnectSheet.tsx';
import { LiveSheet } from './LiveSheet.tsx';
import { ReadingSheet } from './ReadingSheet.tsx';
import { RoundPaused } from './RoundPaused.tsx';
import './meter.css';

/** Connect a meter, see that it sends, set up how its bytes are read. */
export function MeterScreen() {
  const output = useMeter((meter) => meter.state);
  const error = useMeter((meter) => meter.error);
  const { say } = useWords();
  return (
    <Screen title={say('meter.title')} lead={say('meter.lead')}>
      <RoundPaused />
      <Await of={[{ output, error, again: loadMeter }]}>
        {(state) => (
          <>
            <ConnectSheet state={state} />
            <ConfirmMeter state={state} otherwise={<span>{say('meter.confirm.set-up')}</span>} />
            {state.phase === 'live' && <LiveSheet state={state} />}
            {state.characteristics.length > 0 && <ReadingSheet state={state} />}
          </>
        )}
      </Await>
    </Screen>
  );
}
