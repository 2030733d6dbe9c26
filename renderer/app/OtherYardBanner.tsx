import { followOther, goToYard, useYard } from '../stores/yard.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { useWords } from '../words.ts';

/** Another window opened another yard: what is on screen stays, and nothing can be changed here until the person follows. */
export function OtherYardBanner() {
  const { say } = useWords();
  const other = useYard((yard) => yard.other);
  if (!other) return null;
  return (
    <Banner
      kind="problem"
      actions={
        <Button onClick={() => goToYard(followOther)}>
          {say(other.kind === 'demo' ? 'frame.go-to-demo' : 'frame.go-to-own')}
        </Button>
      }
    >
      {say(other.kind === 'demo' ? 'frame.other-opened-demo' : 'frame.other-opened-own')}
    </Banner>
  );
}
