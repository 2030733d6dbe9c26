import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { M3_PER_BOARD_FOOT } from '../../../shared-core/measures.ts';
import type { KnownAverage } from '../../../shared-core/probing/calls/judgement.ts';
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
import { type Message, message } from '../../../shared-core/words/message.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { Figure } from './CallOfBoard.tsx';

/** What a board's size and weight follow from. */
export interface ShapeFacts {
  board: BoardRow;
  species: Species;
  endUse: EndUse;
  /** Null where it is not known how wet the board is. */
  known: KnownAverage | null;
}

/** How much wood a board is, and what it weighs wet and when it is dry enough for its use. */
export function VolumeAndWeight({ board, species, endUse, known }: ShapeFacts) {
  const units = useUnits();
  const { say, formats } = useWords();
  const { thicknessMm, widthMm, lengthMm } = board;
  if (widthMm === null || lengthMm === null) {
    const missing = widthMm !== null ? 'length' : lengthMm !== null ? 'width' : 'both';
    return <p className="soft">{say('movement.size-missing', { missing })}</p>;
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
  const gravity = species.basicSpecificGravity;
  if (known && gravity !== null) {
    // A wet board's reading may be above what its wood can hold.
    const most = mostWaterPct(gravity);
    const targetPct = Math.min(targetOfUsePct(endUse), most);
    const mass = boardMassKg(size, species, Math.min(known.averagePct, most), targetPct);
    if (mass) {
      facts.push(
        [
          say(known.readOn === null ? 'movement.weight-now' : 'movement.weight-when-probed'),
          formats.weight(mass.nowKg),
          say(known.readOn === null || known.isEstimated ? 'movement.at-about-mc' : 'movement.at-mc', {
            mcPct: known.averagePct,
          }),
        ],
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

/** What is not known of a species, and where it is entered. */
export function Missing({ messages, species }: { messages: readonly Message[]; species: Species }) {
  const { say } = useWords();
  if (messages.length === 0) return null;
  return (
    <p className="soft">
      {messages.map((each) => `${say(each)} `)}
      <a href={hrefOf({ name: 'species', id: species.id })}>
        {say('movement.species-data', { speciesName: species.name })}
      </a>
    </p>
  );
}
