import { Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { ActList } from './ActList.tsx';

/** What was done in the yard, and undoing any of it. */
export function HistoryScreen() {
  const { say } = useWords();
  return (
    <Screen title={say('act.title')} lead={say('act.lead')}>
      <Sheet>
        <ActList boardId={null} />
      </Sheet>
    </Screen>
  );
}
