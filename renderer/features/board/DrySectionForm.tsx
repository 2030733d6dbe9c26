import { requests } from '../../../shared-core/contract/requests.ts';
import type { SampleSection } from '../../../shared-core/contract/sample-board.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

/** EN 13183-1 (oven-dry method), from memory: 103 ± 2 °C, until less than 0.1 % is lost in 2 h. */
const OVEN = { leastTempC: 101, mostTempC: 105, lossPct: 0.1 };

const schema = requests['samples.drySection'].input.omit({ at: true });

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
  const { field, read } = useDraft(schema, { sectionId: id, grams: null });
  return (
    <FormDialog
      title={say('weights.dry-title', { sectionName })}
      saveWords={say('common.save')}
      onSave={() => bridge().command('samples.drySection', { ...read(), at: new Date().toISOString() })}
      onClose={onClose}
    >
      <p>
        {say('weights.dry-how', OVEN)} {say('weights.dry-wet', { wetGrams })}
      </p>
      <Banner kind="caution">{say('weights.dry-caution')}</Banner>
      <NumberField label={say('weights.dry-weight')} unit="g" autoFocus {...field('grams')} />
    </FormDialog>
  );
}
