import { parseTyped } from '../../../shared-core/labels/typed-value.ts';
import { type Draft, dropDraft, unitOfDraft } from '../../stores/drafts.ts';
import { aimAt } from '../../stores/round-aim.ts';
import { reopenRound } from '../../stores/round-opening.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';

/** A value that was typed for a spot and is in no field now. It is saved there, or discarded, and never elsewhere. */
export function UnsavedValue({ draft, isFinished = false }: { draft: Draft; isFinished?: boolean }) {
  const { say, formats } = useWords();
  const { boardId, spotIndex, boardCode } = draft;
  const unit = unitOfDraft(draft);
  const raw = parseTyped(draft.text, unit) ?? Number.NaN;
  const shown = unit === 'pct' || Number.isNaN(raw) ? draft.text.trim() : rawText(raw, unit, formats);
  async function goThere(): Promise<void> {
    if (isFinished) await reopenRound();
    await aimAt(boardId, spotIndex);
  }
  return (
    <Banner
      kind="caution"
      actions={
        <>
          <Button onClick={() => void goThere()}>
            {say(isFinished ? 'round-page.reopen' : 'round.unsaved-go-to')}
          </Button>
          <Button kind="quiet" onClick={() => dropDraft(draft)}>
            {say('round.unsaved-discard')}
          </Button>
        </>
      }
    >
      {say(isFinished ? 'round.unsaved-finished' : 'round.unsaved', {
        typedText: shown,
        boardCode,
      })}
    </Banner>
  );
}
