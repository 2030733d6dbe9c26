import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import { changeText, type DisplayUnits, shortLengthText } from '../../../shared-core/units/length.ts';
import { weightText } from '../../../shared-core/units/weight.ts';
import { mostWaterPct } from '../../../shared-core/wood/moisture/most-water.ts';
import {
  BOARD_FOOT_M3,
  boardFeetTallied,
  boardMassKg,
  cubicMetresTallied,
  volumeM3,
} from '../../../shared-core/wood/movement/volume.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { Failed, Loading, Sheet } from '../../parts/Screen.tsx';
import { TableFrame } from '../../parts/TableFrame.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useAnswer } from '../../useAnswer.ts';
import { sawingWords } from './end-words.ts';
import { missingForChanges, type SizeChange, sizeChanges } from './size-changes.ts';
import './shrinkage.css';

/** What a board loses on the way to its use: size by both published routes, and mass; and its volume. */
export function ShrinkageSection({
  board,
  endUse,
  units,
}: {
  board: BoardRow;
  /** Null while it is not known. */
  endUse: EndUse | null;
  units: DisplayUnits;
}) {
  const allSpecies = useAnswer('species.list', {});
  const species = allSpecies.output?.find((each) => each.id === board.speciesId);
  return (
    <Sheet title="Size, volume and mass">
      {allSpecies.error && <Failed sentence={allSpecies.error} again={allSpecies.again} />}
      {allSpecies.loading && <Loading what="the wood’s figures" />}
      {species && endUse && (
        <>
          <Shrinking board={board} species={species} endUse={endUse} units={units} />
          <VolumeAndMass board={board} species={species} endUse={endUse} units={units} />
        </>
      )}
    </Sheet>
  );
}

interface Facts {
  board: BoardRow;
  species: Species;
  endUse: EndUse;
  units: DisplayUnits;
}

function Shrinking({ board, species, endUse, units }: Facts) {
  const nowPct = board.latest?.averagePct ?? null;
  if (nowPct === null) {
    return <p>What it will still shrink depends on what it holds now: probe it first.</p>;
  }
  const target = targetOfUsePct(endUse);
  const changes = sizeChanges(board, species, nowPct, target);
  const missing = missingForChanges(board, species, nowPct, target);
  const known = changes.filter((each) => each.byShrinkageMm !== null || each.byCoefficientMm !== null);
  return (
    <>
      <p>
        From {pctWords(nowPct)} % now to {pctWords(target)} %, as {endUse.name} wants it:
      </p>
      {known.length > 0 && <ChangeTable changes={known} units={units} />}
      <Missing sentences={missing} speciesId={species.id} />
    </>
  );
}

const sideWords: Record<SizeChange['side'], string> = { width: 'Width', thickness: 'Thickness' };

function ChangeTable({ changes, units }: { changes: readonly SizeChange[]; units: DisplayUnits }) {
  const cell = (mm: number | null, sizeMm: number) =>
    mm === null ? '–' : `${changeText(mm, units)} (${signedPct((100 * mm) / sizeMm)})`;
  return (
    <TableFrame name="Change of size">
      <table className="table shrinkage-table">
        <caption>
          Wood Handbook, chapter 13. Boards of one wood differ: expect up to a third more or less.
        </caption>
        <thead>
          <tr>
            <th scope="col">Side</th>
            <th scope="col" className="number">
              Now
            </th>
            <th scope="col" className="number">
              By shrinkage, green to dry
            </th>
            <th scope="col" className="number">
              By change coefficient
            </th>
          </tr>
        </thead>
        <tbody>
          {changes.map((change) => (
            <tr key={`${change.side} ${change.sawing}`}>
              <th scope="row">
                {sideWords[change.side]} <small>{sawingWords[change.sawing].toLowerCase()}</small>
              </th>
              <td className="number">{shortLengthText(change.sizeMm, units)}</td>
              <td className="number">{cell(change.byShrinkageMm, change.sizeMm)}</td>
              <td className="number">{cell(change.byCoefficientMm, change.sizeMm)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
}

const signedPct = (pct: number): string => `${pct < 0 ? '−' : '+'}${Math.abs(pct).toFixed(1)} %`;

function Missing({ sentences, speciesId }: { sentences: readonly string[]; speciesId: string }) {
  if (sentences.length === 0) return null;
  return (
    <p className="shrinkage-missing">
      {sentences.join(' ')} <a href={hrefOf({ name: 'species', id: speciesId })}>The wood’s figures</a>
    </p>
  );
}

function VolumeAndMass({ board, species, endUse, units }: Facts) {
  const { thicknessMm, widthMm, lengthMm } = board;
  if (widthMm === null || lengthMm === null) {
    const unknown = [widthMm === null && 'width', lengthMm === null && 'length'].filter(Boolean);
    return (
      <p className="shrinkage-missing">
        Its {unknown.join(' and ')} {unknown.length > 1 ? 'are' : 'is'} not known, so neither are its volume
        and mass.
      </p>
    );
  }
  const size = { thicknessMm, widthMm, lengthMm };
  const facts: [string, string, string][] = [
    [
      'Board feet, tallied',
      boardFeetTallied(size).toString(),
      `${(volumeM3(size) / BOARD_FOOT_M3).toFixed(2)} as it is`,
    ],
    [
      'Cubic metres, tallied',
      `${cubicMetresTallied(size).toFixed(3)} m³`,
      `${volumeM3(size).toFixed(4)} as it is`,
    ],
  ];
  const nowPct = board.latest?.averagePct ?? null;
  const gravity = species.basicSpecificGravity;
  if (nowPct !== null && gravity !== null) {
    // A wet board's reading may lie above what its wood can hold.
    const most = mostWaterPct(gravity);
    const target = Math.min(targetOfUsePct(endUse), most);
    const mass = boardMassKg(size, species, Math.min(nowPct, most), target);
    if (mass) {
      facts.push(
        ['Mass now', weightText(mass.nowKg, units), `at ${pctWords(nowPct)} %`],
        ['Mass then', weightText(mass.targetKg, units), `at ${pctWords(target)} %`],
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
          sentences={[`The specific gravity of ${species.name} is not known, so neither is its mass.`]}
          speciesId={species.id}
        />
      )}
    </>
  );
}
