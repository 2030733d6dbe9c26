import { type Draft, dropDraft } from '../../stores/drafts.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** A value that was typed for a spot and is in no field now. It is saved there, or discarded, and never elsewhere. */
export function UnsavedValue({
  draft,
  says,
  leads,
  onGo,
}: {
  draft: Draft;
  says: 'round.unsaved' | 'round.unsaved-finished';
  leads: 'round.unsaved-go-to' | 'round-page.reopen';
  /** Null where its board is no longer in the round. */
  onGo: (() => void) | null;
}) {
  const { say } = useWords();
  return (
    <Banner
      kind="caution"
      actions={
        <>
          {onGo && <Button onClick={onGo}>{say(leads)}</Button>}
          <Button kind="quiet" onClick={() => dropDraft(draft)}>
            {say('round.unsaved-discard')}
          </Button>
        </>
      }
    >
      {say(says, { typedText: draft.text.trim(), boardCode: draft.boardCode })}
    </Banner>
  );
}
