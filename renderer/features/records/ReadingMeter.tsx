import { useState } from 'react';
import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { Choice } from '../../form/Choice.tsx';
import { Select } from '../../form/Field.tsx';
import { useSaving } from '../../form/useSaving.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { ProfileFacts } from '../meter/ProfileFacts.tsx';

/** The meter that a value was read with, and the way to say that it was another. */
export function ReadingMeter({
  reading,
  meter,
  meters,
  chosenId: meterId,
  onChosen,
  onClose,
}: {
  reading: JudgedReading;
  /** Null where it was not named. */
  meter: MeterOfYard | null;
  meters: readonly MeterOfYard[];
  chosenId: number | null;
  onChosen: (meterId: number | null) => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { busy, problem, save } = useSaving(onClose);
  const { underWay, follow, cancel } = useLongWork();
  const [scope, setScope] = useState<'reading' | 'round'>('reading');
  // What was typed before a meter had a name may have been read off any.
  const isNumberOnly = reading.how === 'typed' && reading.meterId === null;
  const options = meters
    .filter(({ unit }) => unit === reading.unit || isNumberOnly)
    .map(({ id, name }) => ({ value: id as number | null, label: name, isName: true }));
  const chosen = meters.find(({ id }) => id === meterId);
  if (options.length === 0 || reading.isDamaged) return null;

  async function move(): Promise<void> {
    if (meterId === null) return;
    const to = { readingId: reading.id, scope, meterId };
    const { act, readings } = await follow((work) => bridge().command('readings.setMeter', { ...to, work }));
    tellUndoable(say('meters.updated', { readings }), (work) => bridge().command('acts.undo', { act, work }));
  }

  return (
    <form
      className="column"
      onSubmit={(event) => {
        event.preventDefault();
        void save(move);
      }}
    >
      <Select
        label={say('reading-meter.read-with')}
        value={meterId}
        options={meter ? options : [{ value: null, label: say('reading-meter.unknown') }, ...options]}
        onValue={onChosen}
      />
      {chosen && <ProfileFacts meter={chosen} />}
      {chosen && (
        <Choice
          label={say('reading-meter.for')}
          value={scope}
          options={[
            { value: 'reading', label: say('reading-meter.for-reading') },
            { value: 'round', label: say('reading-meter.for-round') },
          ]}
          onValue={setScope}
        />
      )}
      {problem && <Banner kind="problem">{problem.sentence}</Banner>}
      {underWay !== null && underWay.total > 0 ? (
        <WorkUnderWay label={say('meters.updating')} {...underWay} onCancel={cancel} />
      ) : (
        <Actions>
          {chosen && (
            <Button kind="main" type="submit" disabled={busy}>
              {say('common.save')}
            </Button>
          )}
          <Button onClick={onClose}>{say('common.close')}</Button>
        </Actions>
      )}
    </form>
  );
}
