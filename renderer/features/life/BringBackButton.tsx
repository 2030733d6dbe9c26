import { useLongWork } from '../../data/useLongWork.ts';
import { tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { bringBack } from './bring-back.ts';
import type { NamedBoard } from './LeaveForm.tsx';

/** Brings several archived boards back at once. */
export function BringBackButton({ boards, onBack }: { boards: readonly NamedBoard[]; onBack: () => void }) {
  const { say } = useWords();
  const { underWay, run, cancel } = useLongWork();
  async function back(): Promise<void> {
    const done = await run((work) => bringBack(boards, work), say('life.bringing-back-stopped'));
    if (!done) return;
    onBack();
    tellDone(say('life.boards-back', { boards: done.broughtBack }));
  }
  if (underWay !== null && underWay.total > 0)
    return <WorkUnderWay label={say('life.bringing-back')} {...underWay} onCancel={cancel} />;
  return (
    <Button kind="main" onClick={() => void back()}>
      {say('life.bring-back')}
    </Button>
  );
}
