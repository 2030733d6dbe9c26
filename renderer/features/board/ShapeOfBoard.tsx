import type { BoardForecast } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { M3_PER_BOARD_FOOT } from '../../../shared-core/measures.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import { mostWaterPct } from '../../../shared-core/wood/moisture/most-water.ts';
import {
  missingForChanges,
  type SizeChange,
  sizeChanges,
} from '../../../shared-core/wood/movement/size-changes.ts';
import {
  boardFeetTallied,
  boardMassKg,
  cubicMetersTallied,
  volumeM3,
} from '../../../shared-core/wood/movement/volume.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { type Message, message, thicknessOf } from '../../../shared-core/words/message.ts';
import type { Asked } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useUnits } from '../../stores/settings.ts';
import { Await } from '../../ui/Await.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { Figure } from './CallOfBoard.tsx';
import { CupSection } from './CupSection.tsx';

interface Facts {
  board: BoardRow;
  species: Species;
  endUse: EndUse;
}

/** How a board's size, shape, volume and weight change until it is dry enough for its use. */
export function ShapeOfBoard({
  board,
  species,
  endUse,
  forecast,
}: Omit<Facts, 'endUse'> & {
  /** Null while it is not known. */
  endUse: EndUse | null;
  forecast: Asked<BoardForecast>;
}) {
  const { say } = useWords();
  return (
    <div className={css.columns}>
      <Sheet title={say('cup.title')}>
        <Await of={[forecast]}>
          {({ details, whyNot }) =>
            details?.warp && board.widthMm !== null ? (
              <CupSection
                warp={details.warp}
                board={board}
                widthMm={board.widthMm}
                targetPct={targetOfUsePct(details.endUse)}
              />
            ) : (
              <p>{say(details?.whyNoWarp ?? whyNot!)}</p>
            )
          }
        </Await>
      </Sheet>
      <Sheet title={say('movement.title')}>
        {endUse && (
          <>
            <Shrinking board={board} species={species} endUse={endUse} />
            <VolumeAndWeight board={board} species={species} endUse={endUse} />
          </>
        )}
      </Sheet>
    </div>
  );
}

function Shrinking({ board, species, endUse }: Facts) {
  const { say } = useWords();
  const nowPct = board.latest?.averagePct ?? null;
  if (nowPct === null) {
    return <p>{say('movement.not-probed')}</p>;
  }
  const targetPct = targetOfUsePct(endUse);
  const changes = sizeChanges(board, species, nowPct, targetPct);
  const missing = missingForChanges(board, species, nowPct, targetPct);
  const known = changes.filter((each) => each.byShrinkageMm !== null || each.byCoefficientMm !== null);
  return (
    <>
      <p>{say('movement.from-to', { nowPct, targetPct, useName: endUse.name })}</p>
      {known.length > 0 && <ChangeTable board={board} changes={known} />}
      <Missing messages={missing} species={species} />
    </>
  );
}

function ChangeTable({ board, changes }: { board: BoardRow; changes: readonly SizeChange[] }) {
  const { say, formats } = useWords();
  const cell = (sizeChangeMm: number | null, sizeMm: number) =>
    sizeChangeMm === null
      ? '–'
      : say('movement.change', { sizeChangeMm, changePct: (100 * sizeChangeMm) / sizeMm });
  return (
    <DataTable
      name={say('movement.table')}
      caption={say('movement.table-source')}
      rows={changes}
      keyOf={({ side, sawing }) => `${side} ${sawing}`}
      columns={[
        {
          id: 'side',
          head: say('movement.side'),
          cell: ({ side }) => say(`movement.side.${side}`),
          below: ({ sawing }) => say(`board.sawn.${sawing}`),
        },
        {
          id: 'now',
          head: say('movement.now'),
          cell: ({ side, sizeMm }) =>
            side === 'thickness' ? formats.thickness(thicknessOf(board)) : formats.shortLength(sizeMm),
          align: 'end',
        },
        {
          id: 'by-shrinkage',
          head: say('movement.by-shrinkage'),
          cell: ({ byShrinkageMm, sizeMm }) => cell(byShrinkageMm, sizeMm),
          align: 'end',
        },
        {
          id: 'by-coefficient',
          head: say('movement.by-coefficient'),
          cell: ({ byCoefficientMm, sizeMm }) => cell(byCoefficientMm, sizeMm),
          align: 'end',
        },
      ]}
    />
  );
}

function Missing({ messages, species }: { messages: readonly Message[]; species: Species }) {
  const { say } = useWords();
  if (messages.length === 0) return null;
  return (
    <p className={css.soft}>
      {messages.map((each) => `${say(each)} `)}
      <a href={hrefOf({ name: 'species', id: species.id })}>
        {say('movement.species-data', { speciesName: species.name })}
      </a>
    </p>
  );
}

function VolumeAndWeight({ board, species, endUse }: Facts) {
  const units = useUnits();
  const { say, formats } = useWords();
  const { thicknessMm, widthMm, lengthMm } = board;
  if (widthMm === null || lengthMm === null) {
    const missing = widthMm !== null ? 'length' : lengthMm !== null ? 'width' : 'both';
    return <p className={css.soft}>{say('movement.size-missing', { missing })}</p>;
  }
  const size = { thicknessMm, widthMm, lengthMm };
  const exact = (volume: string) => say('movement.exact', { volume });
  const facts: [string, string, string][] = [
    [
      say('movement.board-feet'),
      formats.boardFeet(boardFeetTallied(size)),
      exact(formats.boardFeet(volumeM3(size) / M3_PER_BOARD_FOOT)),
    ],
  ];
  if (units === 'metric') {
    facts.push([
      say('movement.cubic-meters'),
      formats.volume(cubicMetersTallied(size)),
      exact(formats.volume(volumeM3(size))),
    ]);
  }
  const nowPct = board.latest?.averagePct ?? null;
  const gravity = species.basicSpecificGravity;
  if (nowPct !== null && gravity !== null) {
    // A wet board's reading may be above what its wood can hold.
    const most = mostWaterPct(gravity);
    const targetPct = Math.min(targetOfUsePct(endUse), most);
    const mass = boardMassKg(size, species, Math.min(nowPct, most), targetPct);
    if (mass) {
      facts.push(
        [say('movement.weight-now'), formats.weight(mass.nowKg), say('movement.at-mc', { mcPct: nowPct })],
        [
          say('movement.weight-at-target'),
          formats.weight(mass.targetKg),
          say('movement.at-mc', { mcPct: targetPct }),
        ],
      );
    }
  }
  return (
    <>
      <dl className={css.figures}>
        {facts.map(([label, value, note]) => (
          <Figure key={label} label={label} note={note}>
            {value}
          </Figure>
        ))}
      </dl>
      {gravity === null && (
        <Missing
          messages={[message('movement.gravity-missing', { speciesName: species.name })]}
          species={species}
        />
      )}
    </>
  );
}
