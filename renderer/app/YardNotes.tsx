import { bridge } from '../data/bridge.ts';
import { useQuery } from '../data/useQuery.ts';
import { SalvageReportButton } from '../features/recovery/SalvageReportButton.tsx';
import { attempt } from '../stores/notices.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { useWords } from '../words.ts';

/** What a person must know of the yard's file, on every screen until they dismiss it. */
export function YardNotes() {
  const { say } = useWords();
  const { output } = useQuery('recovery.notes', {});
  return output?.map((note) => (
    <Banner
      key={note.code}
      kind="caution"
      actions={
        <>
          {note.code === 'yard-note.salvaged' && <SalvageReportButton />}
          <Button onClick={() => attempt(bridge().command('recovery.dismissNote', { code: note.code }))}>
            {say('frame.dismiss')}
          </Button>
        </>
      }
    >
      {say(note)}
    </Banner>
  ));
}
