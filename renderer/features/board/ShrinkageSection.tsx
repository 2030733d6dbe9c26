import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import { mostWaterPct } from '../../../shared-core/wood/moisture/most-water.ts';
import {
  boardFeetTallied,
  boardMassKg,
  cubicMetersTallied,
  volumeM3,
} from '../../../shared-core/wood/movement/volume.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { type Message, message, thicknessOf } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useUnits } from '../../stores/settings.ts';
import { DataTable } from '../../ui/DataTable.tsx';
import { Failed, Loading, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { missingForChanges, type SizeChange, sizeChanges } from './size-changes.ts';
import './shrinkage.css';
import { M3_PER_BOARD_FOOT } from '../../../shared-core/measures.ts';

/** What a board loses until it is dry enough for its use, in size by both published routes and in weight; its volume. */
export function ShrinkageSection({
  board,
  endUse,
}: {
  board: BoardRow;
  /** Null while it is not known. */
  endUse: EndUse | null;
}) {
  const { say } = useWords();
  const allSpecies = useQuery('species.list', {});
  const species = allSpecies.output?.find((each) => each.id === board.speciesId);
  return (
    <Sheet title={say('movement.title')}>
      {allSpecies.error && <Failed sentence={allSpecies.error} again={allSpecies.again} />}
      {allSpecies.loading && <Loading />}
      {species && endUse && (
        <>
          <Shrinking board={board} species={species} endUse={endUse} />
          <VolumeAndWeight board={board} species={species} endUse={endUse} />
        </>
      )}
    </Sheet>
  );
}

interface Facts {
  board: BoardRow;
  species: Species;
  endUse: EndUse;
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
    <p className="shrinkage-missing">
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
    return <p className="shrinkage-missing">{say('movement.size-missing', { missing })}</p>;
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
      <dl className="board-figures">
        {facts.map(([label, value, note]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
            <dd className="board-figure-note">{note}</dd>
          </div>
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
