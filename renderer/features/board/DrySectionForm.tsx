import { useState } from 'react';
import type { SampleSection } from '../../../shared-core/contract/sample-board.ts';
import { bridge } from '../../data/bridge.ts';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { isWeight, WeightField } from '../../form/WeightField.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

/** EN 13183-1 (oven-dry method), from memory: 103 ± 2 °C, until less than 0.1 % is lost in 2 h. */
const OVEN = { leastTempC: 101, mostTempC: 105, lossPct: 0.1 };

/** Asks what a section weighs out of the oven. */
export function DrySectionForm({
  section: { id, wetGrams },
  sectionName,
  onClose,
}: {
  section: SampleSection;
  /** "Section 1". */
  sectionName: string;
  onClose: () => void;
}) {
  const { say } = useWords();
  const [grams, setGrams] = useState<number | null>(null);
  const [shown, setShown] = useState(false);
  async function save(): Promise<void> {
    setShown(true);
    if (!isWeight(grams)) throw fieldsMarked();
    await bridge().command('samples.drySection', { sectionId: id, grams, at: new Date().toISOString() });
  }
  return (
    <FormDialog
      title={say('weights.dry-title', { sectionName })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <p>
        {say('weights.dry-how', OVEN)} {say('weights.dry-wet', { wetGrams })}
      </p>
      <Banner kind="caution">{say('weights.dry-caution')}</Banner>
      <WeightField
        label={say('weights.dry-weight')}
        unit="g"
        autoFocus
        weight={grams}
        shown={shown}
        onWeight={setGrams}
      />
    </FormDialog>
  );
}
