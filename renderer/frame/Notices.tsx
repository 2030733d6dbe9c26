import { Banner } from '../parts/Banner.tsx';
import { Button } from '../parts/Button.tsx';
import { dismiss, useNotices } from '../stores/notices.ts';

/** What was done or went wrong, in the corner of the window. */
export function Notices() {
  const notices = useNotices((store) => store.notices);
  return (
    <div className="notices">
      {notices.map((notice) => (
        <Banner
          key={notice.id}
          kind={notice.kind}
          actions={
            <Button kind="quiet" onClick={() => dismiss(notice.id)}>
              Put away
            </Button>
          }
        >
          {notice.sentence}
        </Banner>
      ))}
    </div>
  );
}
