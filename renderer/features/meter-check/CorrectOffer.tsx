import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';

/** Offers to take off what a check found a meter to be off by. Nothing is corrected by itself. */
export function CorrectOffer({
  checkId,
  readings,
  rightValue,
  onDone,
  onNotNow,
}: {
  checkId: number;
  /** So many were taken since the check. */
  readings: number;
  /** What the meter should have shown, as text. */
  rightValue: string;
  onDone?: () => void;
  onNotNow: () => void;
}) {
  const { say } = useWords();
  const { underWay, run, cancel } = useLongWork();
  async function correct(): Promise<void> {
    const moved = await run(
      (work) => bridge().command('meterChecks.correct', { checkId, work }),
      say('meter-check.correct-stopped'),
    );
    if (!moved) return;
    tellUndoable(say('meter-check.done', { readings: moved.readings }), (work) =>
      bridge().command('acts.undo', { act: moved.act, work }),
    );
    onDone?.();
  }
  if (underWay !== null && underWay.total > 0)
    return <WorkUnderWay label={say('meter-check.correcting')} {...underWay} onCancel={cancel} />;
  return (
    <>
      <p>
        {say('meter-check.offer')} {say('meter-check.offer-hint', { rightValue })}
      </p>
      <Actions>
        <Button onClick={correct}>{say('meter-check.correct', { readings })}</Button>
        <Button kind="quiet" onClick={onNotNow}>
          {say('meter-check.not-now')}
        </Button>
      </Actions>
    </>
  );
}
