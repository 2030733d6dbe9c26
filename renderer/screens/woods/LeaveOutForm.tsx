import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { JudgedOvenCheck, OvenMass } from '../../../shared-core/contract/oven-checks.ts';
import { bridge } from '../../bridge.ts';
import { TextField } from '../../parts/Field.tsx';
import { FormDialog } from '../../parts/FormDialog.tsx';

/** Asks why a piece, or one mass of it, should not count. */
export function LeaveOutForm({
  check,
  mass,
  onClose,
}: {
  check: JudgedOvenCheck;
  /** Null: the whole check. */
  mass: OvenMass | null;
  onClose: () => void;
}) {
  const [why, setWhy] = useState('');
  async function save(): Promise<void> {
    if (why.trim() === '') throw new Refusal('Say why it should not count. Nothing was changed yet.');
    await bridge().call('ovenChecks.setAside', {
      checkId: check.id,
      massId: mass?.id ?? null,
      why: why.trim(),
    });
  }
  return (
    <FormDialog
      title={mass ? `Set ${mass.grams} g of ${check.piece} aside?` : `Set ${check.piece} aside?`}
      saveWords="Set aside"
      onSave={save}
      onClose={onClose}
    >
      <p>It stays on record, is left out, and can be put back.</p>
      <TextField
        label="Why"
        hint={
          mass ? 'Like: a slip of typing, another piece.' : 'Like: a knot, read while frozen, resin ran out.'
        }
        maxLength={200}
        value={why}
        onValue={setWhy}
      />
    </FormDialog>
  );
}
