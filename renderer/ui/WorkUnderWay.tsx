import { useId, useLayoutEffect, useRef } from 'react';
import { useWords } from '../words.ts';
import { Button } from './Button.tsx';
import css from './work-under-way.module.css';

/** How far long work is, with a button that stops it. Where what had the focus gave way to it, that button has it. */
export function WorkUnderWay({
  label,
  done,
  total,
  onCancel,
}: {
  /** What is being done: "Making the PDF …". */
  label: string;
  done: number;
  /** 0 while it is not known. */
  total: number;
  onCancel: () => void;
}) {
  const { say } = useWords();
  const id = useId();
  const cancel = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    const hasNoFocus = document.activeElement?.contains(cancel.current) ?? true;
    if (hasNoFocus) cancel.current?.focus();
  }, []);
  return (
    <div className={css.work}>
      <span id={id}>{label}</span>
      <progress aria-labelledby={id} {...(total > 0 && { value: done, max: total })} />
      {total > 0 && <span className="soft">{say('common.done-of', { done, total })}</span>}
      <Button ref={cancel} onClick={onCancel}>
        {say('common.cancel')}
      </Button>
    </div>
  );
}
