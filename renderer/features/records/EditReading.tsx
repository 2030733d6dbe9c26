import { useState } from 'react';
import { z } from 'zod';
import { Conflict, Refusal } from '../../../shared-core/contract/answer.ts';
import { type ShownValue, typedSchema } from '../../../shared-core/contract/requests/rounds.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { parseTyped, RAW_EXAMPLE, withoutPercent } from '../../../shared-core/labels/typed-value.ts';
import { isMovedAway } from '../../../shared-core/probing/readings/exclusion.ts';
import { type Depth, type JudgedReading, MOST_TYPED } from '../../../shared-core/probing/readings/reading.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { megohmsOf } from '../../../shared-core/units/typed-ohms.ts';
import { bridge } from '../../data/bridge.ts';
import { TypedNumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TemperatureField, useWoodTemp } from '../../form/TemperatureField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useMeanwhile } from '../../form/useMeanwhile.ts';
import { useQuestions } from '../../form/useQuestions.ts';
import { tellDone } from '../../stores/notices.ts';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { type OfReading, ReadingAction } from './ReadingAction.tsx';

/** Corrects what a reading showed, and how warm its wood was. */
export function EditReading({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const words = useWords();
  const { say } = words;
  if (reading.isDamaged || isMovedAway(reading.excluded)) return null;
  const recordName = readingName(reading, depth, words);
  return (
    <ReadingAction words={say('common.edit')} title={say('reading-edit.of', { recordName })}>
      {(onClose) => <EditReadingForm {...{ reading, recordName, onClose }} />}
    </ReadingAction>
  );
}

/** The questions with which it is refused. */
const slips = {
  'refusal.correction-slip': { isAsMeant: true },
  'refusal.correction-slip.ohm': { isAsMeant: true },
} as const;

/** The value that a slip in typing was probably meant to be, in the reading's unit. */
function meantIn({ problem: { facts } }: Refusal): number | null {
  const meant = facts?.rawMeantPct ?? facts?.rawMeantOhm;
  return typeof meant === 'number' ? meant : null;
}

function EditReadingForm({ reading, recordName, onClose }: OfReading) {
  const { say, formats } = useWords();
  const { id: readingId, how, savedRaw } = reading;
  const { shown, theirs, thrown, conflict } = useMeanwhile<ShownValue>(reading);
  const { unit } = shown;
  const valueSchema = z.object({
    raw: typedSchema.max(MOST_TYPED[unit], says('validation.no-meter-shows')),
  });
  const value = useDraft(valueSchema, { raw: shown.raw }, theirs && { raw: theirs.raw });
  const temperatureOf = ({ woodTempC }: ShownValue) => ({ woodTempC, unknown: woodTempC === null });
  const temperature = useWoodTemp(temperatureOf(shown));
  const isTyped = how === 'typed';
  const { open, ask } = useQuestions<{ isAsMeant: boolean }, keyof typeof slips>(slips, value.draft);
  const [meant, setMeant] = useState<number | null>(null);
  const asked = open === null ? null : meant;
  const inWords = (raw: number) => rawText(raw, unit, formats);

  const saveTyped = () => save(isTyped ? value.read().raw : shown.raw);

  async function save(raw: number, isAsMeant = false): Promise<void> {
    const woodTempC = temperature.read();
    const isOther = raw !== shown.raw;
    if (!isOther && woodTempC === shown.woodTempC) return;
    const corrected = {
      ...(isOther && { raw }),
      ...(woodTempC !== shown.woodTempC && { woodTempC }),
    };
    await ask((answers) =>
      bridge().command('readings.correct', {
        readingId,
        corrected,
        shown,
        ...answers,
        ...(isAsMeant && { isAsMeant }),
      }),
    ).catch((error: unknown) => {
      if (error instanceof Refusal && !(error instanceof Conflict)) setMeant(meantIn(error));
      return thrown(error);
    });
    const [shownValue, newValue] = [inWords(shown.raw), inWords(raw)];
    tellDone(
      isOther
        ? say('reading-edit.changed', { shownValue, newValue })
        : say('reading-edit.temperature-changed'),
    );
  }

  return (
    <FormDialog
      title={say('reading-edit.of', { recordName })}
      saveWords={say(asked === null ? 'common.save' : 'reading-edit.save-as-typed')}
      onSave={saveTyped}
      isQuestion={asked !== null}
      instead={
        asked === null
          ? null
          : {
              words: say('saved.use-meant', { shownValue: inWords(asked) }),
              onSave: () => save(asked, true),
            }
      }
      onClose={onClose}
      conflict={conflict((now) => {
        value.refill({ raw: now.raw });
        temperature.refill(temperatureOf(now));
      })}
    >
      {isTyped ? (
        <TypedNumberField
          label={say('reading-edit.value')}
          hint={
            savedRaw === undefined
              ? say('reading-edit.effect')
              : say('reading-edit.saved-as', { shownValue: inWords(savedRaw) })
          }
          inputMode="decimal"
          autoFocus
          unit={unit === 'pct' ? '%' : 'MΩ'}
          {...value.field('raw')}
          read={(text) => parseTyped(withoutPercent(text.trim(), unit), unit)}
          write={(raw) => String(unit === 'pct' ? raw : megohmsOf(raw))}
          unreadable={(typedText) => say('round.not-a-number', { typedText, rawExample: RAW_EXAMPLE[unit] })}
        />
      ) : (
        <p>{say('reading-edit.sent', { shownValue: inWords(shown.raw) })}</p>
      )}
      <TemperatureField answer={temperature} autoFocus={!isTyped} />
      <p className="soft">{say('reading-edit.date')}</p>
    </FormDialog>
  );
}
