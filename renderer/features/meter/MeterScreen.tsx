import { isToBeAsked } from '../../../shared-core/contract/meter.ts';
import { useQuery } from '../../data/useQuery.ts';
import { loadMeter, useMeter } from '../../stores/meter.ts';
import { Await } from '../../ui/Await.tsx';
import { Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { AskProfile } from './AskProfile.tsx';
import { ConfirmMeter } from './ConfirmMeter.tsx';
import { ConnectSheet } from './ConnectSheet.tsx';
import { LiveSheet } from './LiveSheet.tsx';
import { MetersSheet } from './MetersSheet.tsx';
import { ReadingSheet } from './ReadingSheet.tsx';
import { RoundPaused } from './RoundPaused.tsx';
import './meter.css';

/** Connect a meter, see that it sends, say what each meter is set to, and set up how bytes are read. */
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
            {state.phase === 'live' && state.toConfirm === null && <AskOfLive meterId={state.meterId} />}
            {state.phase === 'live' && <LiveSheet state={state} />}
            {(state.phase === 'needs-description' || state.characteristics.length > 0) && (
              <ReadingSheet state={state} />
            )}
            <MetersSheet />
          </>
        )}
      </Await>
    </Screen>
  );
}

/** Asks what the connected meter is set to, until somebody answered. */
function AskOfLive({ meterId }: { meterId: number | null }) {
  const { output } = useQuery('meters.list', {});
  const meter = output?.find(({ id }) => id === meterId);
  return meter && isToBeAsked(meter) ? <AskProfile meter={meter} /> : null;
}
