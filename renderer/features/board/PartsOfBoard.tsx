import type { ReactNode } from 'react';
import type { BoardForecast } from '../../../shared-core/contract/forecast.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { type Asked, useQuery } from '../../data/useQuery.ts';
import { showTab } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { Tabs } from '../../ui/Tabs.tsx';
import { useWords } from '../../words.ts';
import { ActList } from '../history/ActList.tsx';
import { OvenChecksSection } from '../species/OvenChecksSection.tsx';
import { AboutBoard } from './AboutBoard.tsx';
import { MovesOfBoard } from './MovesOfBoard.tsx';
import { ProfileChart } from './ProfileChart.tsx';
import { ReadingsOfBoard } from './ReadingsOfBoard.tsx';
import { RoundsOfBoard } from './RoundsOfBoard.tsx';
import { SampleBoardSection } from './SampleBoardSection.tsx';
import { ShapeOfBoard } from './ShapeOfBoard.tsx';

/** What a person looks up of a board now and then, behind tabs. */
export function PartsOfBoard({
  found,
  forecast,
  endUse,
  tab,
}: {
  found: RequestOutput<'boards.get'>;
  forecast: Asked<BoardForecast>;
  endUse: EndUse | null;
  /** Which is shown at first; null for the first. */
  tab: string | null;
}) {
  const { board, moves, readings, findings, isSpeciesConfirmed } = found;
  const { say } = useWords();
  const allSpecies = useQuery('species.list', {});
  const ofSpecies = (part: (species: Species) => ReactNode) => () => (
    <Await of={[allSpecies]}>
      {(all) => {
        const species = all.find(({ id }) => id === board.speciesId);
        return species && part(species);
      }}
    </Await>
  );
  return (
    <Tabs
      label={say('board.parts')}
      first={tab}
      onTab={(id) => showTab({ name: 'board', id: board.id, tab: id })}
      tabs={[
        {
          id: 'readings',
          title: say('board.readings-count', { readings: readings.length }),
          panel: () => (
            <Sheet>
              {readings.length > 0 ? (
                <>
                  <ReadingsOfBoard found={found} />
                  <RoundsOfBoard boardId={board.id} />
                </>
              ) : (
                <p>{say('board.no-readings')}</p>
              )}
            </Sheet>
          ),
        },
        {
          id: 'thickness',
          title: say('profile.title'),
          panel: () => (
            <Sheet>
              <Await of={[forecast]}>
                {({ details, whyNot }) =>
                  details ? <ProfileChart board={board} details={details} /> : <p>{whyNot && say(whyNot)}</p>
                }
              </Await>
            </Sheet>
          ),
        },
        {
          id: 'shape',
          title: say('board.shape'),
          panel: ofSpecies((species) => (
            <ShapeOfBoard board={board} species={species} endUse={endUse} forecast={forecast} />
          )),
        },
        {
          id: 'weight',
          title: say('board.weight'),
          panel: () => <SampleBoardSection board={board} findings={findings} />,
        },
        {
          id: 'oven-checks',
          title: say('board.oven-checks'),
          panel: ofSpecies((species) => <OvenChecksSection species={species} />),
        },
        {
          id: 'about',
          title: say('board.about-and-moves'),
          panel: () => (
            <div className="beside wide-first">
              <Sheet title={say('board.about')}>
                <AboutBoard board={board} isSpeciesConfirmed={isSpeciesConfirmed} />
              </Sheet>
              <Sheet title={say('board.moves')}>
                <MovesOfBoard board={board} moves={moves} />
              </Sheet>
            </div>
          ),
        },
        {
          id: 'changes',
          title: say('act.of-board'),
          panel: () => (
            <Sheet>
              <ActList boardId={board.id} />
            </Sheet>
          ),
        },
      ]}
    />
  );
}
