import { download } from '../../data/download.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import css from './log.module.css';

/** The newest part of the fault log, which a person can read, or save to send it to somebody. */
export function LogDialog({
  file,
  text,
  isWritten,
  onClose,
}: {
  file: string;
  text: string;
  isWritten: boolean;
  onClose: () => void;
}) {
  const { say } = useWords();
  return (
    <Dialog title={say('log.title')} onClose={onClose}>
      <p className="file" translate="no">
        {file}
      </p>
      {!isWritten && <p>{say('log.not-written')}</p>}
      {text === '' ? (
        isWritten && <p>{say('log.empty')}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: only what has the focus scrolls by keys.
        <section className={css.text} aria-label={say('log.newest')} tabIndex={0} translate="no">
          <pre>{text}</pre>
        </section>
      )}
      <Actions>
        <Button onClick={onClose}>{say('common.close')}</Button>
        {text !== '' && (
          <Button onClick={() => download(new Blob([text], { type: 'text/plain' }), 'pintally.log')}>
            {say('log.save')}
          </Button>
        )}
      </Actions>
    </Dialog>
  );
}
