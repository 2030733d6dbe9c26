import { useState } from 'react';
import type { z } from 'zod';
import { problemOfField } from '../../shared-core/contract/validation.ts';
import { useUnsaved } from '../stores/unsaved-forms.ts';
import { useWords } from '../words.ts';
import { afterPress } from './after-press.ts';
import { fieldsMarked } from './FormDialog.tsx';

/** A record while it is typed, in SI: a blank text is empty, any other blank is null, and a number that cannot be read NaN. */
export type Draft<T> = { [K in keyof T]: [T[K]] extends [string] ? T[K] : T[K] | null };

/**
 * A form's fields, checked by the contract's own schema. What is wrong with a field is shown at the field, once it was
 * left or the form was to be saved.
 *
 * @param schema  of the record that the form makes
 * @param start   what the fields show at first
 * @param theirs  what another window saved meanwhile, shown at the fields where this person typed something else
 * @param form    the form whose fields outlast its screen
 * @param part    of that form
 */
export function useDraft<T extends object, Made>(
  schema: z.ZodType<Made, T>,
  start: Draft<T>,
  theirs: Draft<T> | null = null,
  form: string | null = null,
  part = 'fields',
) {
  const { say } = useWords();
  const [filled, setFilled] = useState(start);
  const [draft, setDraft] = useUnsaved(form, part, start);
  const [left, setLeft] = useState<ReadonlySet<keyof T>>(new Set());
  const [wasSaved, setWasSaved] = useState(false);
  const checked = schema.safeParse(draft);
  const isTyped = (key: keyof T, over: Draft<T>) => JSON.stringify(draft[key]) !== JSON.stringify(over[key]);
  const issueOf = (key: keyof T) => checked.error?.issues.find(({ path }) => path[0] === key);

  return {
    draft,
    /** The record that the fields make now; undefined while something is wrong with one. */
    made: checked.data,
    set: (changed: Partial<Draft<T>>): void => setDraft((before) => ({ ...before, ...changed })),
    /** What a field needs to show and change one part of the record. */
    field<K extends keyof T & string>(key: K) {
      const issue = wasSaved || left.has(key) ? issueOf(key) : undefined;
      return {
        value: draft[key],
        error: issue ? say(problemOfField(key, issue)) : null,
        saved: theirs && isTyped(key, filled) && isTyped(key, theirs) ? theirs[key] : undefined,
        onValue(value: Draft<T>[K]): void {
          setDraft((before) => ({ ...before, [key]: value }));
        },
        onBlur: (): void => afterPress(() => setLeft((before) => new Set(before).add(key))),
      };
    },
    /** Shows what is wrong at every field, left or not. */
    show: (): void => setWasSaved(true),
    /**
     * The record as it is to be saved.
     * @throws Refusal where the schema finds something wrong, which the fields then show
     */
    read(): Made {
      setWasSaved(true);
      if (!checked.success) throw fieldsMarked();
      return checked.data;
    },
    /** Starts again from another record. */
    refill(record: Draft<T>): void {
      setFilled(record);
      setDraft(record);
      setLeft(new Set());
      setWasSaved(false);
    },
  };
}

/** What a part of a form needs of the draft to show its own fields, whatever others the form has. */
export type Fields<T extends object> = Pick<
  ReturnType<typeof useDraft<T, unknown>>,
  'draft' | 'field' | 'set'
>;
