import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import { fromOf, isFrom } from '../../../shared-core/gatt/source.ts';
import { Trace } from '../../chart/Trace.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';
import { Bytes, hexOf } from './Bytes.tsx';
import type { Found } from './found.ts';
import { motionOf, type ShownPlace } from './watched-places.ts';

const TRACE_SLOTS = 80;
const signs = { moves: '↕', hardly: '~', counts: '↑', still: '–', silent: '·' };

/** What the meter sends, what moves with the pins first. */
export function MovingPlaces({
  places,
  chosen,
  showsBytes,
}: {
  places: readonly ShownPlace[];
  /** How one of them may be read: its trace is of the reading then. */
  chosen: Found | null;
  showsBytes: boolean;
}) {
  const { say } = useWords();
  return (
    <>
      <ul className="moving-places" aria-label={say('watch.places')}>
        {places.map((place) => (
          <Place
            key={place.key}
            place={place}
            chosen={chosen && isFrom(chosen.proposal.source, fromOf(place.source)) ? chosen : null}
            showsBytes={showsBytes}
          />
        ))}
      </ul>
      {!places.some((place) => motionOf(place) === 'moves') && <Banner>{say('watch.nothing-moves')}</Banner>}
    </>
  );
}

function Place({
  place,
  chosen,
  showsBytes,
}: {
  place: ShownPlace;
  chosen: Found | null;
  showsBytes: boolean;
}) {
  const { say } = useWords();
  const { name, packets, movement } = place;
  const motion = motionOf(place);
  const { liveliest } = movement;
  const newest = packets.at(-1)?.bytes;
  return (
    <li data-motion={motion}>
      <span className="place-name">
        {typeof name === 'string' ? <span translate="no">{name}</span> : say(name)}
      </span>
      <span className="place-motion">
        <span aria-hidden="true">{signs[motion]}</span> {say(`watch.motion.${motion}`)}
      </span>
      {motion === 'moves' && liveliest !== null && (
        <Trace
          values={
            chosen
              ? readingsOf(chosen)
              : packets.slice(-TRACE_SLOTS).map(({ bytes }) => bytes[liveliest] ?? null)
          }
          unit={chosen?.proposal.unit ?? 'pct'}
          slots={TRACE_SLOTS}
        />
      )}
      {showsBytes && newest && (
        <span className="place-bytes">
          <Bytes hex={hexOf(newest)} marked={(at) => movement.motions[at] === 'moves'} />
        </span>
      )}
    </li>
  );
}

/** Null with the pins out. */
const readingsOf = ({ packets, description }: Found): (number | null)[] =>
  packets.slice(-TRACE_SLOTS).map(({ bytes }) => {
    const { value } = decodePacket(bytes, description);
    return value?.ok && value.value > 0 ? value.value : null;
  });
