import { go } from '../stores/navigation.ts';
import { followOther, useYard } from '../stores/yard.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { useWords } from '../words.ts';
import css from './frame.module.css';

/** Another window opened another yard: what is on screen stays, and nothing can be changed here until the person follows. */
export function OtherYardBanner() {
  const { say } = useWords();
  const other = useYard((yard) => yard.other);
  if (!other) return null;
  return (
    <div className={css.banner}>
      <Banner
        kind="problem"
        actions={
          <Button
            onClick={() => {
              followOther();
              go({ name: 'stacks' });
            }}
          >
            {say(other.kind === 'demo' ? 'frame.go-to-demo' : 'frame.go-to-own')}
          </Button>
        }
      >
        {say(other.kind === 'demo' ? 'frame.other-opened-demo' : 'frame.other-opened-own')}
      </Banner>
    </div>
  );
}
