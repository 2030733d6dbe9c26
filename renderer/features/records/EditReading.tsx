import { useState } from 'react';
import { z } from 'zod';
import { Conflict, Refusal } from '../../../shared-core/contract/answer.ts';
import { type ShownValue, shownValueOf, typedSchema } from '../../../shared-core/contract/requests/rounds.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { readCell, readTyped, withoutPercent } from '../../../shared-core/labels/typed-value.ts';
import { withoutAbove } from '../../../shared-core/probing/readings/beyond-scale.ts';
import { isMovedAway } from '../../../shared-core/probing/readings/exclusion.ts';
import { type Depth, type JudgedReading, MOST_TYPED } from '../../../shared-core/probing/readings/reading.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { megohmsOf } from '../../../shared-core/units/typed-ohms.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { TypedNumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TemperatureField, useWoodTemp } from '../../form/TemperatureField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useMeanwhile } from '../../form/useMeanwhile.ts';
import { useQuestions } from '../../form/useQuestions.ts';
import { tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText, shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import type { OfReading } from './of-reading.ts';

/** Corrects what a reading showed, and how warm its wood was. */
export function EditReading({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const words = useWords();
  const { say } = words;
  const [isOpen, setOpen] = useState(false);
  if (reading.isDamaged || isMovedAway(reading.excluded)) return null;
  const recordName = readingName(reading, depth, words);
  return (
    <>
      <Button kind="quiet" aria-label={say('reading-edit.of', { recordName })} onClick={() => setOpen(true)}>
        {say('common.edit')}
      </Button>
      {isOpen && <EditReadingForm {...{ reading, recordName }} onClose={() => setOpen(false)} />}
    </>
  );
}

/** The questions with which it is refused. */
const slips = {
  'refusal.correction-slip': { isAsMeant: true },
  'refusal.correction-slip.ohm': { isAsMeant: true },
  'refusal.correction-unused': { isAsMeant: true },
} as const;

/** The value that a slip in typing was probably meant to be, in the reading's unit. */
function meantIn({ problem: { facts } }: Refusal): number | null {
  const meant = facts?.rawMeantPct ?? facts?.rawMeantOhm;
  return typeof meant === 'number' ? meant : null;
}

/** Read as on a page of a notebook; NaN for what is no reading. */
function rawIn(text: string, unit: ReadingUnit): number | null {
  if (text.trim() === '') return null;
  const typed = readCell(text, unit);
  return 'raw' in typed ? typed.raw : Number.NaN;
}
/** Why that is no reading. */
function problemIn(text: string, unit: ReadingUnit): Message {
  const typed = readTyped(withoutPercent(text.trim(), unit), [], unit);
  return 'problem' in typed ? typed.problem : message('validation.not-a-number', { typedText: text });
}

function EditReadingForm({ reading, recordName, onClose }: OfReading) {
  const words = useWords();
  const { say, formats } = words;
  const { id: readingId, how, savedRaw } = reading;
  const { shown, theirs, thrown, conflict } = useMeanwhile<ShownValue>(shownValueOf(reading));
  const { unit } = shown;
  const valueSchema = z.object({
    raw: typedSchema.max(MOST_TYPED[unit], says('validation.no-meter-shows')),
    isAbove: z.boolean(),
  });
  const shownOf = ({ raw, isAbove }: ShownValue) => ({ raw, isAbove });
  const value = useDraft(valueSchema, shownOf(shown), theirs && shownOf(theirs));
  const temperatureOf = ({ woodTempC }: ShownValue) => ({ woodTempC, unknown: woodTempC === null });
  const temperature = useWoodTemp(temperatureOf(shown));
  const isTyped = how === 'typed';
  const { open, ask } = useQuestions<{ isAsMeant: boolean }, keyof typeof slips>(slips, value.draft);
  const [meant, setMeant] = useState<number | null>(null);
  const asked = open === null ? null : meant;
  const inWords = (of: Pick<ShownValue, 'raw' | 'isAbove'>) => shownText({ ...of, unit }, words);
  const rawField = value.field('raw');
  const isAbove = value.draft.isAbove ?? false;

  const saveTyped = () => save(isTyped ? value.read() : shown);

  async function save(given: Pick<ShownValue, 'raw' | 'isAbove'>, isAsMeant = false): Promise<void> {
    const woodTempC = temperature.read();
    const isOther = given.raw !== shown.raw || given.isAbove !== shown.isAbove;
    if (!isOther && woodTempC === shown.woodTempC) return;
    const corrected = {
      ...(isOther && { raw: given.raw, isAbove: given.isAbove }),
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
    const [shownValue, newValue] = [inWords(shown), inWords(given)];
    tellDone(
      isOther
        ? say('reading-edit.changed', { shownValue, newValue })
        : say('reading-edit.temperature-changed'),
    );
  }

  return (
    <FormDialog
      title={say('reading-edit.of', { recordName })}
      saveWords={say(open === null ? 'common.save' : 'reading-edit.save-as-typed')}
      onSave={saveTyped}
      isQuestion={open !== null}
      instead={
        asked === null
          ? null
          : {
              words: say('saved.use-meant', { shownValue: inWords({ raw: asked, isAbove }) }),
              onSave: () => save({ raw: asked, isAbove }, true),
            }
      }
      onClose={onClose}
      conflict={conflict((now) => {
        value.refill(shownOf(now));
        temperature.refill(temperatureOf(now));
      })}
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
          {...rawField}
          saved={rawField.saved !== undefined && theirs ? inWords(theirs) : undefined}
          onValue={(raw, text) => value.set({ raw, isAbove: withoutAbove(text).isAbove })}
          read={(text) => rawIn(text, unit)}
          write={(raw) => `${isAbove ? '>' : ''}${unit === 'pct' ? raw : megohmsOf(raw)}`}
          unreadable={(typedText) => say(problemIn(typedText, unit))}
        />
      ) : (
        <p>{say('reading-edit.sent', { shownValue: inWords(shown) })}</p>
      )}
      <TemperatureField answer={temperature} autoFocus={!isTyped} />
      <p className="soft">{say('reading-edit.date')}</p>
    </FormDialog>
  );
}
