import { useEffect, useRef, useState } from 'react';
import { create } from 'zustand';
import { createJSONStorage, persist } from 'zustand/middleware';
import { useYard } from './yard.ts';

/**
 * What is typed into forms that fill a screen, by yard, form and part. It lasts as long as the window does: a person goes
 * to Help and back as often as they like.
 */
export const useUnsavedForms = create<{ parts: Record<string, unknown> }>()(
  persist((): { parts: Record<string, unknown> } => ({ parts: {} }), {
    name: 'pintally.unsaved-forms',
    storage: createJSONStorage(() => sessionStorage),
  }),
);

const keyOf = (form: string, part: string): string =>
  `${useYard.getState().info?.uuid ?? ''} ${form} ${part}`;

/** As `useState`, for one part of a form that outlasts its screen; of a form without a name, for none that does. */
export function useUnsaved<T>(form: string | null, part: string, start: T) {
  const [value, setValue] = useState<T>(() => {
    const { parts } = useUnsavedForms.getState();
    const key = form === null ? null : keyOf(form, part);
    return key !== null && key in parts ? (parts[key] as T) : start;
  });
  const written = useRef(value);
  useEffect(() => {
    if (form === null || value === written.current) return;
    written.current = value;
    useUnsavedForms.setState(({ parts }) => ({ parts: { ...parts, [keyOf(form, part)]: value } }));
  }, [form, part, value]);
  return [value, setValue] as const;
}

const isOf = (form: string) => (key: string) => key.startsWith(keyOf(form, ''));

export const hasUnsaved = (form: string): boolean =>
  Object.keys(useUnsavedForms.getState().parts).some(isOf(form));

/** It was saved, or the person discards it. */
export function dropUnsaved(form: string): void {
  useUnsavedForms.setState(({ parts }) => ({
    parts: Object.fromEntries(Object.entries(parts).filter(([key]) => !isOf(form)(key))),
  }));
}
