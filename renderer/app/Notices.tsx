import { useLongWork } from '../data/useLongWork.ts';
import { dismiss, type Notice, useNotices } from '../stores/notices.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button, ButtonLink } from '../ui/Button.tsx';
import { WorkUnderWay } from '../ui/WorkUnderWay.tsx';
import { useWords } from '../words.ts';
import css from './frame.module.css';

/** The newest; the page under them stays in sight. */
const MOST_SHOWN = 2;

/** What was done or went wrong, in the corner of the window, and how far the undoing of something large is. */
export function Notices() {
  const { say } = useWords();
  const notices = useNotices((store) => store.notices);
  const { underWay, run, cancel } = useLongWork();
  const undo = ({ id, undo }: Notice): void => {
    dismiss(id);
    if (undo) void run(undo, say('frame.undo-stopped'));
  };
  return (
    <div className={css.notices}>
      {notices.slice(-MOST_SHOWN).map((notice) => (
        <Banner
          key={notice.id}
          kind={notice.kind}
          actions={
            <>
              {notice.link && <ButtonLink href={notice.link.href}>{notice.link.words}</ButtonLink>}
              {notice.undo && (
                <Button onClick={() => undo(notice)}>
                  {say(notice.isUndone ? 'frame.redo' : 'frame.undo')}
                </Button>
              )}
              <Button kind="quiet" onClick={() => dismiss(notice.id)}>
                {say('frame.dismiss')}
              </Button>
            </>
          }
        >
          {notice.sentence}
        </Banner>
      ))}
      {notices.length > MOST_SHOWN && (
        <small>{say('frame.more-notices', { more: notices.length - MOST_SHOWN })}</small>
      )}
      {underWay !== null && underWay.total > 0 && (
        <Banner>
          <WorkUnderWay label={say('frame.undoing')} {...underWay} onCancel={cancel} />
        </Banner>
      )}
    </div>
  );
}
