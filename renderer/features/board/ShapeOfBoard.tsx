import type { BoardForecast } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import {
  missingForChanges,
  type SizeChange,
  sizeChanges,
} from '../../../shared-core/wood/movement/size-changes.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import type { Asked } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { CupSection } from './CupSection.tsx';
import { Missing, type ShapeFacts, VolumeAndWeight } from './VolumeAndWeight.tsx';

/** How a board's size, shape, volume and weight change until it is dry enough for its use. */
export function ShapeOfBoard({
  board,
  species,
  endUse,
  forecast,
}: Omit<ShapeFacts, 'endUse'> & {
  /** Null while it is not known. */
  endUse: EndUse | null;
  forecast: Asked<BoardForecast>;
}) {
  const { say } = useWords();
  return (
    <div className="beside">
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

function Shrinking({ board, species, endUse }: ShapeFacts) {
  const { say } = useWords();
  const nowPct = board.latest?.averagePct ?? null;
  if (nowPct === null) {
    return <p>{say('movement.not-probed')}</p>;
  }
  const targetPct = targetOfUsePct(endUse);
  const changes = sizeChanges(board, species, nowPct, targetPct);
  const missing = missingForChanges(board, species, nowPct, targetPct);
  const known = changes.filter(
    ({ byRouteMm }) => byRouteMm.shrinkage !== null || byRouteMm.coefficient !== null,
  );
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
        ...(['shrinkage', 'coefficient'] as const).map((route) => ({
          id: route,
          head: say(`movement.by-${route}`),
          cell: ({ byRouteMm, sizeMm }: SizeChange) => cell(byRouteMm[route], sizeMm),
          align: 'end' as const,
        })),
      ]}
    />
  );
}
