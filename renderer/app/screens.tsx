import type { ReactNode } from 'react';
import { StacksScreen } from '../features/stacks/StacksScreen.tsx';
import { hrefOf, type Route } from '../stores/navigation.ts';
import { ButtonLink } from '../ui/Button.tsx';
import { EmptyState, Screen } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';
import { later } from './later.tsx';

// Where the window begins, Stacks is there at once. The likely ones to come next are first.
const BoardsScreen = later(async () => (await import('../features/stacks/BoardsScreen.tsx')).BoardsScreen);
const StackScreen = later(async () => (await import('../features/stacks/StackScreen.tsx')).StackScreen);
const BoardScreen = later(async () => (await import('../features/board/BoardScreen.tsx')).BoardScreen);
const RoundStartScreen = later(
  async () => (await import('../features/round/RoundStartScreen.tsx')).RoundStartScreen,
);
const RoundScreen = later(async () => (await import('../features/round/RoundScreen.tsx')).RoundScreen);
const LabelsScreen = later(async () => (await import('../features/labels/LabelsScreen.tsx')).LabelsScreen);
const MeterScreen = later(async () => (await import('../features/meter/MeterScreen.tsx')).MeterScreen);
const PlacesScreen = later(async () => (await import('../features/places/PlacesScreen.tsx')).PlacesScreen);
const DatesScreen = later(async () => (await import('../features/dates/DatesScreen.tsx')).DatesScreen);
const SettingsScreen = later(
  async () => (await import('../features/settings/SettingsScreen.tsx')).SettingsScreen,
);
const PastRoundScreen = later(
  async () => (await import('../features/past-round/PastRoundScreen.tsx')).PastRoundScreen,
);
const TallyScreen = later(async () => (await import('../features/tally/TallyScreen.tsx')).TallyScreen);
const ReportScreen = later(async () => (await import('../features/reports/ReportScreen.tsx')).ReportScreen);
const SpeciesListScreen = later(
  async () => (await import('../features/species/SpeciesListScreen.tsx')).SpeciesListScreen,
);
const SpeciesScreen = later(
  async () => (await import('../features/species/SpeciesScreen.tsx')).SpeciesScreen,
);
const AirScreen = later(async () => (await import('../features/air/AirScreen.tsx')).AirScreen);
const FilesScreen = later(async () => (await import('../features/files/FilesScreen.tsx')).FilesScreen);
const ImportScreen = later(async () => (await import('../features/import/ImportScreen.tsx')).ImportScreen);
const HistoryScreen = later(
  async () => (await import('../features/history/HistoryScreen.tsx')).HistoryScreen,
);
const BackupsScreen = later(
  async () => (await import('../features/backups/BackupsScreen.tsx')).BackupsScreen,
);
const CheckScreen = later(async () => (await import('../features/reports/CheckScreen.tsx')).CheckScreen);
const HelpScreen = later(async () => (await import('../help/HelpScreen.tsx')).HelpScreen);
const LicensesScreen = later(async () => (await import('../help/LicensesScreen.tsx')).LicensesScreen);
const MethodsScreen = later(async () => (await import('../help/MethodsScreen.tsx')).MethodsScreen);

/** Those whose code comes later. */
export const laterScreens = [
  BoardsScreen,
  StackScreen,
  BoardScreen,
  RoundStartScreen,
  RoundScreen,
  LabelsScreen,
  MeterScreen,
  PlacesScreen,
  DatesScreen,
  SettingsScreen,
  PastRoundScreen,
  TallyScreen,
  ReportScreen,
  SpeciesListScreen,
  SpeciesScreen,
  AirScreen,
  FilesScreen,
  ImportScreen,
  HistoryScreen,
  BackupsScreen,
  CheckScreen,
  HelpScreen,
  MethodsScreen,
  LicensesScreen,
] as const;

/** Brings the code of all screens, one after the other, so that none has to be waited for when it is gone to. */
export async function bringScreens(): Promise<void> {
  for (const screen of laterScreens) {
    await untilIdle();
    await screen.load();
  }
}

/** Safari has no such event. */
const untilIdle = (): Promise<unknown> =>
  new Promise((idle) => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(idle);
    else setTimeout(idle, 50);
  });

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
      return <HelpScreen chapter={route.chapter ?? null} heading={route.heading ?? null} />;
    case 'methods':
      return <MethodsScreen part={route.part ?? null} />;
    case 'licenses':
      return <LicensesScreen />;
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
