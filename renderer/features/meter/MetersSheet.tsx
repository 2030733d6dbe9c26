import { useState } from 'react';
import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { attempt, tellDone, tellUndoable } from '../../stores/notices.ts';
import { typeFrom, useTypingMeter } from '../../stores/typing-meter.ts';
import { Await } from '../../ui/Await.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { MeterChecks } from '../meter-check/MeterChecks.tsx';
import { MeterMore } from './MeterMore.tsx';
import { ProfileFacts } from './ProfileFacts.tsx';
import { ProfileForm } from './ProfileForm.tsx';

/** The meters of the yard: what each is set to, its pins, and which one typed values are read from. */
export function MetersSheet() {
  const { say } = useWords();
  const asked = useQuery('meters.list', {});
  const checked = useQuery('meterChecks.list', {});
  const [open, setOpen] = useState<MeterOfYard | 'new' | null>(null);
  if (asked.loading) return null;
  return (
    <Sheet title={say('meters.title')}>
      <Await of={[asked]}>
        {(meters) =>
          meters.length === 0 ? (
            <p>{say('meters.none')}</p>
          ) : (
            <ul className="list meters" aria-label={say('meters.title')}>
              {meters.map((meter) => (
                <li key={meter.id} className="column">
                  <Meter meter={meter} onEdit={() => setOpen(meter)} />
                  {checked.output && <MeterChecks meter={meter} checked={checked.output} />}
                </li>
              ))}
            </ul>
          )
        }
      </Await>
      <Actions>
        <Button onClick={() => setOpen('new')}>{say('meters.add')}</Button>
      </Actions>
      {open && <ProfileForm meter={open === 'new' ? null : open} onClose={() => setOpen(null)} />}
    </Sheet>
  );
}

function Meter({ meter, onEdit }: { meter: MeterOfYard; onEdit: () => void }) {
  const { say } = useWords();
  const { id: meterId, name: meterName, kind } = meter;
  const isTypedFrom = useTypingMeter()?.id === meterId;
  async function remove(): Promise<void> {
    if (await attempt(bridge().command('meters.delete', { meterId })))
      tellDone(say('meters.deleted', { meterName }));
  }
  const { output: usage } = useQuery('meters.use', { meterId });
  return (
    <>
      <h3 translate="no">{meterName}</h3>
      <p className="soft">
        {!meterName.startsWith(say('meter-profile.usual-name', { number: 1 })) &&
          say('meters.kind', { kind })}{' '}
        {isTypedFrom && say('meters.is-typing')}
      </p>
      <ProfileFacts meter={meter} />
      <Actions>
        <Button aria-label={say('meters.edit-named', { meterName })} onClick={onEdit}>
          {say('common.edit')}
        </Button>
        {!isTypedFrom && (
          <Button
            kind="quiet"
            aria-label={say('meters.typing-named', { meterName })}
            onClick={() => void attempt(typeFrom(meterId))}
          >
            {say('meters.typing')}
          </Button>
        )}
        {kind === 'typed' && usage?.isUsed === false && (
          <Button kind="quiet" aria-label={say('meters.delete-named', { meterName })} onClick={remove}>
            {say('meters.delete')}
          </Button>
        )}
        {kind !== 'simulated' && <MeterMore meter={meter} />}
      </Actions>
      {usage && usage.earlierReadings > 0 && (
        <EarlierReadings meterId={meterId} readings={usage.earlierReadings} />
      )}
    </>
  );
}

/** Readings that keep an earlier version of the meter's profile, and the press that gives them the newest. */
function EarlierReadings({ meterId, readings }: { meterId: number; readings: number }) {
  const { say } = useWords();
  const { underWay, run, cancel } = useLongWork();
  async function update(): Promise<void> {
    const moved = await run(
      (work) => bridge().command('meters.updateEarlier', { meterId, work }),
      say('meters.update-stopped'),
    );
    if (!moved) return;
    tellUndoable(say('meters.updated', { readings: moved.readings }), (work) =>
      bridge().command('acts.undo', { act: moved.act, work }),
    );
  }
  if (underWay !== null && underWay.total > 0) {
    return <WorkUnderWay label={say('meters.updating')} {...underWay} onCancel={cancel} />;
  }
  return (
    <p>
      {say('meters.earlier', { readings })}{' '}
      <Button kind="quiet" onClick={update}>
        {say('meters.update-earlier', { readings })}
      </Button>
    </p>
  );
}
