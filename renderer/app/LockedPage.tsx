import { ScreenHeading } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';
import css from './frame.module.css';

/** The window came by an address that does not open it: why, and the ways in. It opens by itself once there is one. */
export function LockedPage() {
  const { say } = useWords();
  return (
    <main className={`column ${css.problem}`}>
      <ScreenHeading title={say('locked.title')} />
      <p>{say('locked.why')}</p>
      <p>{say('locked.other-tab')}</p>
      <p>{say('locked.restart')}</p>
    </main>
  );
}
