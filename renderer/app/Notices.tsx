import { attempt, dismiss, type Notice, useNotices } from '../stores/notices.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { useWords } from '../words.ts';
import css from './frame.module.css';

/** What was done or went wrong, in the corner of the window. */
export function Notices() {
  const { say } = useWords();
  const notices = useNotices((store) => store.notices);
  return (
    <div className={css.notices}>
      {notices.map((notice) => (
        <Banner
          key={notice.id}
          kind={notice.kind}
          actions={
            <>
              {notice.undo && <Undo id={notice.id} undo={notice.undo} />}
              <Button kind="quiet" onClick={() => dismiss(notice.id)}>
                {say('frame.dismiss')}
              </Button>
            </>
          }
        >
          {notice.sentence}
        </Banner>
      ))}
    </div>
  );
}

function Undo({ id, undo }: { id: number; undo: NonNullable<Notice['undo']> }) {
  const { say } = useWords();
  return (
    <Button
      onClick={() => {
        dismiss(id);
        void attempt(undo());
      }}
    >
      {say('frame.undo')}
    </Button>
  );
}
