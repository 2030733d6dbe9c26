import { useState } from 'react';
import { calendarFile } from '../../../shared-core/calendar/calendar-file.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { download } from '../../data/download.ts';
import { useQuery } from '../../data/useQuery.ts';
import { useUpdating } from '../../data/useUpdating.ts';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { dayOf } from '../../ui/days.ts';
import { Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { DateList } from './DateList.tsx';
import { eventsOf } from './events.ts';
import { PlannedMoveForm } from './PlannedMoveForm.tsx';
import { ProjectsSheet } from './ProjectsSheet.tsx';

/** What is due when, for the whole yard, and the projects that boards are reserved for. */
export function DatesScreen() {
  const { say } = useWords();
  const dates = useQuery('dates.list', {});
  const projects = useQuery('projects.list', {});
  const isUpdating = useUpdating();
  const [isPlanning, setPlanning] = useState(false);
  return (
    <Screen
      title={say('dates.title')}
      lead={say('dates.lead')}
      actions={
        <>
          <Button onClick={() => setPlanning(true)}>{say('dates.plan-move')}</Button>
          {dates.output && <CalendarButton dates={dates.output} />}
        </>
      }
    >
      {isUpdating && <Banner>{say('stacks.forecasting')}</Banner>}
      <Await of={[dates]}>{(all) => <DateList dates={all} />}</Await>
      <Await of={[projects]}>{(all) => <ProjectsSheet projects={all} />}</Await>
      {isPlanning && <PlannedMoveForm onClose={() => setPlanning(false)} />}
    </Screen>
  );
}

function CalendarButton({ dates }: { dates: RequestOutput<'dates.list'> }) {
  const words = useWords();
  const { say } = words;
  function save(): void {
    const now = new Date();
    const file = calendarFile(eventsOf(dates, dayOf(now), words), now.toISOString());
    download(new Blob([file], { type: 'text/calendar;charset=utf-8' }), say('dates.calendar-name'));
  }
  return (
    <Button title={say('dates.calendar-hint')} onClick={save}>
      {say('dates.calendar-save')}
    </Button>
  );
}
