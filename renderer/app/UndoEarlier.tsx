import { leaveQuestion, undoEarlier, useUndoQuestion } from '../stores/undoing.ts';
import { Actions, Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { useWords } from '../words.ts';

/** Asks whether the newest change is undone that is not of this window, as one from before it was opened. */
export function UndoEarlier() {
  const { say, formats } = useWords();
  const act = useUndoQuestion(({ asked }) => asked);
  if (act === null) return null;
  return (
    <Dialog title={say('act.undo-earlier')} onClose={leaveQuestion}>
      <p>{say('act.undo-earlier-what', { atText: formats.dateTime(act.at), line: act.line })}</p>
      <Actions>
        <Button kind="main" onClick={() => void undoEarlier(act.id)}>
          {say('frame.undo')}
        </Button>
        <Button onClick={leaveQuestion}>{say('common.cancel')}</Button>
      </Actions>
    </Dialog>
  );
}
