import { useState } from 'react';
import { kindOfProblem } from '../../../shared-core/contract/yard-problem.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { sentenceOf, tellDone } from '../../stores/notices.ts';
import { restoreYard, undoRestore, useYard } from '../../stores/yard.ts';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { Inside } from './Inside.tsx';

/**
 * Shows what is in a yard file before it takes the place of the yard.
 * @param isUndo  whether it is the backup made before the last restore
 */
export function RestoreDialog({
  file,
  name = file,
  isUndo = false,
  onClose,
}: {
  file: string;
  /** What a person knows it by. */
  name?: string;
  isUndo?: boolean;
  onClose: () => void;
}) {
  const { say } = useWords();
  const look = useQuery('backups.look', { file });
  const presentProblem = useYard(({ info }) => info?.problem ?? null);
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const restore = async () => {
    // It stays enabled, so that the focus stays on it.
    if (isBusy) return;
    setBusy(true);
    setProblem(null);
    try {
      await (isUndo ? undoRestore() : restoreYard(file));
      tellDone(say(isUndo ? 'restore.undone' : 'restore.done'));
      onClose();
    } catch (error) {
      setProblem(sentenceOf(error));
      setBusy(false);
    }
  };
  return (
    <Dialog title={say(isUndo ? 'restore.undo-question' : 'restore.question')} onClose={onClose}>
      <p className="file" translate="no">
        {name}
      </p>
      <Await of={[look]}>
        {(found) => (
          <>
            <Inside look={found} />
            <p>
              {say(`restore.${presentProblem === null ? 'backed-up-first' : leftBy(presentProblem)}`)}{' '}
              {found.leftOut !== null && !isUndo && say('restore.can-undo')}
            </p>
          </>
        )}
      </Await>
      {problem && <Banner kind="problem">{problem}</Banner>}
      <Actions>
        <Button kind="main" disabled={look.output === null} onClick={restore}>
          {isBusy ? say('restore.restoring') : say(isUndo ? 'restore.undo-yes' : 'restore.yes')}
        </Button>
        <Button onClick={onClose}>{say('common.cancel')}</Button>
      </Actions>
    </Dialog>
  );
}

/** What stays of the yard that cannot be backed up. */
function leftBy(problem: Message) {
  const kind = kindOfProblem(problem);
  if (kind === 'damaged') return 'damaged-stays';
  return kind === 'missing' ? 'leftover-stays' : 'rescued-stays';
}
