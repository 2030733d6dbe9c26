import { useState } from 'react';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { TextField } from './Field.tsx';
import { FormDialog } from './FormDialog.tsx';

/** Asks why something that was measured should not count. */
export function ExcludeForm({
  what,
  hint,
  onWhy,
  onClose,
}: {
  /** As the question names it: "P1", "4.1 kg". */
  what: string;
  hint: string;
  onWhy: (why: string) => Promise<unknown>;
  onClose: () => void;
}) {
  const [why, setWhy] = useState('');
  async function save(): Promise<void> {
    if (why.trim() === '') throw new Refusal('Say why it should not count. Nothing was changed yet.');
    await onWhy(why.trim());
  }
  return (
    <FormDialog title={`Set ${what} aside?`} saveWords="Set aside" onSave={save} onClose={onClose}>
      <p>It stays on record, is left out, and can be put back.</p>
      <TextField label="Why" hint={hint} maxLength={200} value={why} onValue={setWhy} />
    </FormDialog>
  );
}
