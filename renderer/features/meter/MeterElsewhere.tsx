import { holdMeter, useMeter } from '../../stores/meter.ts';
import { attempt } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** That the connected meter's values go to another window, or to none, and the press that brings them here. */
export function MeterElsewhere() {
  const { say } = useWords();
  const state = useMeter((meter) => meter.state);
  const isSending = state?.phase === 'live' || state?.phase === 'needs-description';
  if (!isSending || state.heldBy === 'this-window') return null;
  return (
    <Banner actions={<Button onClick={() => void attempt(holdMeter())}>{say('meter.use-here')}</Button>}>
      {say(state.heldBy === 'nobody' ? 'meter.held-nowhere' : 'meter.held-elsewhere')}
    </Banner>
  );
}
