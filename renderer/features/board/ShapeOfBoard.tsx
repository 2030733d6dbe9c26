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
}: Pick<ShapeFacts, 'board' | 'species'> & {
  /** Null while it is not known. */
  endUse: EndUse | null;
  forecast: Asked<BoardForecast>;
}) {
  const { say } = useWords();
  return (
    <Await of={[forecast]}>
      {({ details, whyNot, judgement: { average: known } }) => {
        const facts = endUse && { board, species, endUse, known };
        return (
          <div className="beside">
            <Sheet title={say('cup.title')}>
              {details?.warp && board.widthMm !== null ? (
                <CupSection
                  warp={details.warp}
                  board={board}
                  widthMm={board.widthMm}
                  targetPct={targetOfUsePct(details.endUse)}
                />
              ) : (
                <p>{say(details?.whyNoWarp ?? whyNot!)}</p>
              )}
            </Sheet>
            <Sheet title={say('movement.title')}>
              {facts && <Shrinking {...facts} />}
              {facts && <VolumeAndWeight {...facts} />}
            </Sheet>
          </div>
        );
      }}
    </Await>
  );
}

function Shrinking({ board, species, endUse, known }: ShapeFacts) {
  const { say } = useWords();
  if (!known) return <p>{say('movement.unknown-mc')}</p>;
  const { averagePct: fromPct, readOn, isEstimated } = known;
  const targetPct = targetOfUsePct(endUse);
  const changes = sizeChanges(board, species, fromPct, targetPct);
  const missing = missingForChanges(board, species, fromPct, targetPct);
  const ends = { fromPct, targetPct, useName: endUse.name };
  const shown = changes.filter(
    ({ byRouteMm }) => byRouteMm.shrinkage !== null || byRouteMm.coefficient !== null,
  );
  return (
    <>
      <p>
        {readOn === null
          ? say('movement.from-forecast', ends)
          : say(isEstimated ? 'movement.from-estimate' : 'movement.from-read', { ...ends, readOn })}
      </p>
      {shown.length > 0 && <ChangeTable board={board} changes={shown} isRead={readOn !== null} />}
      <Missing messages={missing} species={species} />
    </>
  );
}

function ChangeTable({
  board,
  changes,
  isRead,
}: {
  board: BoardRow;
  changes: readonly SizeChange[];
  /** From what was read last; else from the forecast for today. */
  isRead: boolean;
}) {
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
          head: say(isRead ? 'movement.when-probed' : 'movement.now'),
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
