import { type ReactNode, useRef } from 'react';
import { Button } from '../ui/Button.tsx';

interface Picking {
  label: string;
  /** The endings or media types that are offered. */
  accept: string;
  multiple?: boolean;
  /** At least one, and only one unless `multiple`. */
  onFiles: (files: [File, ...File[]]) => void;
}

/** The browser's own way to choose files, for whatever opens it. @returns what opens it, and what must be on the page */
export function useFilePicker({ label, accept, multiple = false, onFiles }: Picking): {
  open: () => void;
  picker: ReactNode;
} {
  const input = useRef<HTMLInputElement>(null);
  const picker = (
    <input
      ref={input}
      type="file"
      hidden
      multiple={multiple}
      accept={accept}
      aria-label={label}
      onChange={({ target }) => {
        const [first, ...others] = target.files ?? [];
        if (first) onFiles([first, ...others]);
        // The same file can be chosen again.
        target.value = '';
      }}
    />
  );
  return { open: () => input.current?.click(), picker };
}

/**
 * Has the person choose files of theirs, behind a button of ours.
 * @param instead what a press does if the machine has its own dialog
 */
export function FileButton({
  kind = 'plain',
  instead,
  ...picking
}: Picking & { kind?: 'main' | 'plain'; instead?: (() => void) | undefined }) {
  const { open, picker } = useFilePicker(picking);
  return (
    <>
      <Button kind={kind} onClick={instead ?? open}>
        {picking.label}
      </Button>
      {picker}
    </>
  );
}
