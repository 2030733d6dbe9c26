import { useState } from 'react';
import { isUnopened, kindOfProblem } from '../../../shared-core/contract/yard-problem.ts';
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

/** What is restored, as a person knows it: a backup by its UTC instant, a file by its name, or what the last restore or merge replaced. */
export type RestoredThing = { backedUpAt: string } | { fileName: string } | 'last-restore' | 'last-merge';

/** Shows what is in a yard file before it takes the place of the yard. */
export function RestoreDialog({
  file,
  of,
  onClose,
}: {
  file: string;
  of: RestoredThing;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { question, yes } = useQuestion(of);
  const look = useQuery('backups.look', { file });
  const presentProblem = useYard(({ info }) => info?.problem ?? null);
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const isUndo = of === 'last-restore' || of === 'last-merge';
  const isFile = !isUndo && 'fileName' in of;
  const restore = async () => {
    // It stays enabled, so that the focus stays on it.
    if (isBusy) return;
    setBusy(true);
    setProblem(null);
    try {
      await (isUndo ? undoRestore() : restoreYard(file));
      tellDone(
        say(!isUndo ? 'restore.done' : of === 'last-merge' ? 'restore.merge-undone' : 'restore.undone'),
      );
      onClose();
    } catch (error) {
      setProblem(sentenceOf(error));
      setBusy(false);
    }
  };
  return (
    <Dialog title={question} onClose={onClose}>
      {!isFile && (
        <p className="file" translate="no">
          {file}
        </p>
      )}
      {/* Another look does not mend a bad file: the person chooses another. */}
      <Await of={[{ ...look, again: isFile ? undefined : look.again }]}>
        {(found) => (
          <>
            <Inside look={found} source={isFile ? 'file' : 'backup'} />
            <p>
              {say(`restore.${presentProblem === null ? 'backed-up-first' : leftBy(presentProblem)}`)}{' '}
              {found.missing !== null && !isUndo && say('restore.can-undo')}
            </p>
          </>
        )}
      </Await>
      {problem && <Banner kind="problem">{problem}</Banner>}
      <Actions>
        <Button kind="main" disabled={look.output === null} onClick={restore}>
          {isBusy ? say('restore.restoring') : yes}
        </Button>
        <Button onClick={onClose}>{say('common.cancel')}</Button>
      </Actions>
    </Dialog>
  );
}

/** The dialog's title, and the button that says yes to it. */
function useQuestion(of: RestoredThing): { question: string; yes: string } {
  const { say, formats } = useWords();
  if (of === 'last-restore') return { question: say('restore.undo-question'), yes: say('restore.undo-yes') };
  if (of === 'last-merge')
    return { question: say('restore.undo-merge-question'), yes: say('restore.undo-yes') };
  if ('fileName' in of) return { question: say('restore.question-file', of), yes: say('restore.yes-file') };
  const backedUpText = formats.dateTime(of.backedUpAt, true);
  return { question: say('restore.question-backup', { backedUpText }), yes: say('restore.yes-backup') };
}

/** What stays of the yard that cannot be backed up. */
function leftBy(problem: Message) {
  const kind = kindOfProblem(problem);
  if (kind === 'damaged') return 'damaged-stays';
  if (isUnopened(problem)) return 'unopened-stays';
  return kind === 'missing' ? 'leftover-stays' : 'rescued-stays';
}
