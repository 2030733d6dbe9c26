import { lazy, type ReactNode, Suspense } from 'react';
import { AirScreen } from '../features/air/AirScreen.tsx';
import { BackupsScreen } from '../features/backups/BackupsScreen.tsx';
import { BoardScreen } from '../features/board/BoardScreen.tsx';
import { DatesScreen } from '../features/dates/DatesScreen.tsx';
import { FilesScreen } from '../features/files/FilesScreen.tsx';
import { HistoryScreen } from '../features/history/HistoryScreen.tsx';
import { ImportScreen } from '../features/import/ImportScreen.tsx';
import { LabelsScreen } from '../features/labels/LabelsScreen.tsx';
import { MeterScreen } from '../features/meter/MeterScreen.tsx';
import { PastRoundScreen } from '../features/past-round/PastRoundScreen.tsx';
import { PlacesScreen } from '../features/places/PlacesScreen.tsx';
import { CheckScreen } from '../features/reports/CheckScreen.tsx';
import { ReportScreen } from '../features/reports/ReportScreen.tsx';
import { RoundScreen } from '../features/round/RoundScreen.tsx';
import { RoundStartScreen } from '../features/round/RoundStartScreen.tsx';
import { SettingsScreen } from '../features/settings/SettingsScreen.tsx';
import { SpeciesListScreen } from '../features/species/SpeciesListScreen.tsx';
import { SpeciesScreen } from '../features/species/SpeciesScreen.tsx';
import { BoardsScreen } from '../features/stacks/BoardsScreen.tsx';
import { StackScreen } from '../features/stacks/StackScreen.tsx';
import { StacksScreen } from '../features/stacks/StacksScreen.tsx';
import { TallyScreen } from '../features/tally/TallyScreen.tsx';
import { MethodsScreen } from '../help/MethodsScreen.tsx';
import { hrefOf, type Route } from '../stores/navigation.ts';
import { ButtonLink } from '../ui/Button.tsx';
import { EmptyState, Loading, Screen } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';

/** The guide is large, and most never open it. */
const HelpScreen = lazy(() =>
  import('../help/HelpScreen.tsx').then((help) => ({ default: help.HelpScreen })),
);

/** The screen of each route. One line each; a new screen is a route in `navigation.ts` and a line here. */
export function screenAt(route: Route): ReactNode {
  switch (route.name) {
    case 'stacks':
      return <StacksScreen />;
    case 'stack':
      return <StackScreen id={route.id} />;
    case 'boards':
      return <BoardsScreen />;
    case 'board':
      return <BoardScreen id={route.id} tab={route.tab ?? null} />;
    case 'labels':
      return <LabelsScreen boardIds={route.boardIds} stackId={route.stackId ?? null} />;
    case 'tally':
      return <TallyScreen stackId={route.stackId} />;
    case 'report':
      return (
        <ReportScreen
          key={`${route.kind} ${route.id} ${route.more}`}
          kind={route.kind}
          id={route.id}
          more={route.more}
        />
      );
    case 'check':
      return <CheckScreen key={route.code} code={route.code ?? ''} />;
    case 'dates':
      return <DatesScreen />;
    case 'places':
      return <PlacesScreen />;
    case 'air':
      return <AirScreen />;
    case 'species-list':
      return <SpeciesListScreen />;
    case 'species':
      return <SpeciesScreen id={route.id} />;
    case 'backups':
      return <BackupsScreen />;
    case 'import-table':
      return <ImportScreen />;
    case 'files':
      return <FilesScreen />;
    case 'history':
      return <HistoryScreen />;
    case 'settings':
      return <SettingsScreen />;
    case 'help':
      return (
        <Suspense fallback={<Loading />}>
          <HelpScreen chapter={route.chapter ?? null} heading={route.heading ?? null} />
        </Suspense>
      );
    case 'methods':
      return <MethodsScreen part={route.part ?? null} />;
    case 'meter':
      return <MeterScreen />;
    case 'round-start':
      return <RoundStartScreen stackId={route.stackId} placeId={route.placeId ?? null} />;
    case 'past-round':
      return <PastRoundScreen stackId={route.stackId} />;
    case 'round':
      return <RoundScreen id={route.id} />;
    default:
      return <NowhereScreen />;
  }
}

function NowhereScreen() {
  const { say } = useWords();
  return (
    <Screen title={say('frame.nowhere-title')}>
      <EmptyState sentence={say('frame.nowhere')}>
        <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
          {say('nav.go-to-stacks')}
        </ButtonLink>
      </EmptyState>
    </Screen>
  );
}
