import { type ComponentType, useEffect, useState } from 'react';
import { isLinkLost, useLink } from '../stores/link.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { Loading } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';

/**
 * A part of the window whose code comes when it is first shown, or before by `load`. From then on it is there at once,
 * as React's own `lazy` would not have it: that shows it a moment later even then.
 *
 * While the machine is away it waits for the machine's return, which the banner at the top speaks of.
 */
export function later<Props extends object>(bring: () => Promise<ComponentType<Props>>) {
  let part: ComponentType<Props> | null = null;
  let coming: Promise<void> | null = null;
  function load(): Promise<void> {
    coming ??= bring().then(
      (came) => {
        part = came;
      },
      (error: unknown) => {
        coming = null;
        throw error;
      },
    );
    return coming;
  }

  // biome-ignore lint/correctness/noComponentHookFactories: made once for each part, where a module is loaded.
  function Later(props: Props) {
    const [state, setState] = useState<'coming' | 'there' | 'failed'>('coming');
    const isLost = useLink(isLinkLost);
    useEffect(() => {
      let isShown = true;
      const show = (now: typeof state) => () => isShown && setState(now);
      if (part === null && !isLost) load().then(show('there'), show('failed'));
      return () => {
        isShown = false;
      };
    }, [isLost]);
    const Part = part;
    if (Part) return <Part {...props} />;
    return <div className="screen column">{state === 'failed' && !isLost ? <NotLoaded /> : <Loading />}</div>;
  }
  return Object.assign(Later, { load });
}

/** As after an update of Pintally, whose files have other names. */
function NotLoaded() {
  const { say } = useWords();
  return (
    <Banner kind="problem" actions={<Button onClick={() => location.reload()}>{say('frame.reload')}</Button>}>
      {say('frame.not-loaded')}
    </Banner>
  );
}
