import type { ReactNode } from 'react';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';

/** Says what an act comes to before it is done, and afterwards that it was, with its undo. */
export function ConfirmDialog({
  title,
  effect,
  doWords,
  doneWords,
  onDo,
  onClose,
}: {
  title: string;
  effect: ReactNode;
  /** What the button does. */
  doWords: string;
  doneWords: string;
  onDo: () => Promise<unknown>;
  onClose: () => void;
}) {
  return (
    <FormDialog
      title={title}
      saveWords={doWords}
      onSave={async () => {
        await onDo();
        tellDone(doneWords);
      }}
      onClose={onClose}
    >
      <p>{effect}</p>
    </FormDialog>
  );
}
