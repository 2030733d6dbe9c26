import { useRef } from 'react';
import { Button } from '../ui/Button.tsx';

/**
 * Has the person choose files of theirs: the browser's own way, behind a button of ours.
 * @param accept  the endings or media types that are offered
 * @param instead what a press does if the machine has its own dialog
 */
export function FileButton({
  label,
  accept,
  multiple = false,
  kind = 'plain',
  onFiles,
  instead,
}: {
  label: string;
  accept: string;
  multiple?: boolean;
  kind?: 'main' | 'plain';
  /** At least one, and only one unless `multiple`. */
  onFiles: (files: [File, ...File[]]) => void;
  instead?: (() => void) | undefined;
}) {
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button kind={kind} onClick={instead ?? (() => picker.current?.click())}>
        {label}
      </Button>
      <input
        ref={picker}
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
    </>
  );
}
