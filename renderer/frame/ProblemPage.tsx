import { useState } from 'react';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { Banner } from '../parts/Banner.tsx';
import { Actions, Button } from '../parts/Button.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { ScreenHeading } from '../parts/Screen.tsx';
import { attempt } from '../stores/notices.ts';
import { openDemoYard, openOwnYard, startYardAfresh } from '../stores/yard.ts';
import { useWords } from '../words.ts';
import { Notices } from './Notices.tsx';

/** The yard's file cannot be used: what is wrong, what was kept, and the ways on. */
export function ProblemPage({ info }: { info: YardInfo }) {
  const { say } = useWords();
  const [asking, setAsking] = useState(false);
  return (
    <main className="problem-page">
      <ScreenHeading title="This yard cannot be opened" />
      <Banner kind="problem">{info.problem && say(info.problem)}</Banner>
      <p className="file-name">{info.file}</p>
      <Actions>
        <Button kind="main" onClick={() => attempt(info.kind === 'own' ? openOwnYard() : openDemoYard())}>
          Try again
        </Button>
        {info.kind === 'own' ? (
          <Button onClick={() => attempt(openDemoYard())}>Open the demo yard</Button>
        ) : (
          <Button onClick={() => attempt(openOwnYard())}>Open my own yard</Button>
        )}
        {info.canStartAfresh && (
          <Button onClick={() => setAsking(true)}>Put this file beside and start a new yard</Button>
        )}
      </Actions>
      {asking && (
        <Dialog title="Start a new, empty yard?" onClose={() => setAsking(false)}>
          <p>
            The damaged file is not deleted: it stays in the same folder under another name, so that it can
            still be looked at or mended. A new, empty yard takes its place.
          </p>
          <Actions>
            <Button
              kind="main"
              onClick={() => {
                setAsking(false);
                void attempt(startYardAfresh());
              }}
            >
              Start a new yard
            </Button>
            <Button onClick={() => setAsking(false)}>Leave it as it is</Button>
          </Actions>
        </Dialog>
      )}
      <Notices />
    </main>
  );
}
