import { useState } from 'react';
import { z } from 'zod';
import { Conflict } from '../../../shared-core/contract/answer.ts';
import { type ShownValue, typedSchema } from '../../../shared-core/contract/requests/rounds.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { parseTyped } from '../../../shared-core/labels/typed-value.ts';
import { isMovedAway } from '../../../shared-core/probing/readings/exclusion.ts';
import { type Depth, type JudgedReading, MOST_TYPED } from '../../../shared-core/probing/readings/reading.ts';
import { megohmsOf } from '../../../shared-core/units/typed-ohms.ts';
import { bridge } from '../../data/bridge.ts';
import { TypedNumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TemperatureField, useWoodTemp } from '../../form/TemperatureField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';

/** Corrects what a reading showed, and how warm its wood was. */
export function EditReading({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const { say, formats } = useWords();
  const [isOpen, setOpen] = useState(false);
  if (reading.isDamaged || isMovedAway(reading.excluded)) return null;
  const recordName = say('reading.name', {
    depth,
    shownValue: rawText(reading.raw, reading.unit, formats),
  });
  return (
    <>
      <Button kind="quiet" aria-label={say('reading-edit.of', { recordName })} onClick={() => setOpen(true)}>
        {say('common.edit')}
      </Button>
      {isOpen && <EditReadingForm {...{ reading, recordName }} onClose={() => setOpen(false)} />}
    </>
  );
}

function EditReadingForm({
  reading,
  recordName,
  onClose,
}: {
  reading: JudgedReading;
  recordName: string;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const { id: readingId, how, savedRaw } = reading;
  const [shown, setShown] = useState<ShownValue>(reading);
  const [isConflict, setConflict] = useState(false);
  const { unit } = shown;
  const valueSchema = z.object({
    raw: typedSchema.max(MOST_TYPED[unit], says('validation.no-meter-shows')),
  });
  const theirs = isConflict ? { raw: shown.raw } : null;
  const value = useDraft(valueSchema, { raw: shown.raw }, theirs);
  const temperatureOf = ({ woodTempC }: ShownValue) => ({ woodTempC, unknown: woodTempC === null });
  const temperature = useWoodTemp(temperatureOf(shown));
  const isTyped = how === 'typed';

  async function save(): Promise<void> {
    const raw = isTyped ? value.read().raw : shown.raw;
    const woodTempC = temperature.read();
    const isOther = raw !== shown.raw;
    if (!isOther && woodTempC === shown.woodTempC) return;
    const corrected = {
      ...(isOther && { raw }),
      ...(woodTempC !== shown.woodTempC && { woodTempC }),
    };
    await bridge()
      .command('readings.correct', { readingId, corrected, shown })
      .catch((error: unknown) => {
        if (error instanceof Conflict) {
          setShown(error.current as ShownValue);
          setConflict(true);
        }
        throw error;
      });
    const [shownValue, newValue] = [rawText(shown.raw, unit, formats), rawText(raw, unit, formats)];
    tellDone(
      isOther
        ? say('reading-edit.changed', { shownValue, newValue })
        : say('reading-edit.temperature-changed'),
    );
  }

  return (
    <FormDialog
      title={say('reading-edit.of', { recordName })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
      conflict={
        isConflict
          ? {
              takeTheirs: () => {
                setConflict(false);
                value.refill({ raw: shown.raw });
                temperature.refill(temperatureOf(shown));
              },
            }
          : null
      }
    >
      {isTyped ? (
        <TypedNumberField
          label={say('reading-edit.value')}
          hint={
            savedRaw === undefined
              ? say('reading-edit.effect')
              : say('reading-edit.saved-as', { shownValue: rawText(savedRaw, unit, formats) })
          }
          inputMode="decimal"
          autoFocus
          unit={unit === 'pct' ? '%' : 'MΩ'}
          {...value.field('raw')}
          read={(text) => parseTyped(unit === 'pct' ? text.replace(/\s*%\s*$/, '') : text, unit)}
          write={(raw) => String(unit === 'pct' ? raw : megohmsOf(raw))}
          unreadable={(typedText) =>
            say('round.not-a-number', { typedText, rawExample: unit === 'pct' ? 12.4 : 350 })
          }
        />
      ) : (
        <p>{say('reading-edit.sent', { shownValue: rawText(shown.raw, unit, formats) })}</p>
      )}
      <TemperatureField answer={temperature} autoFocus={!isTyped} />
      <p className="soft">{say('reading-edit.date')}</p>
    </FormDialog>
  );
}
