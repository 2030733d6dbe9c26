import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { scaleOf, unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import { Facts } from '../../ui/Facts.tsx';
import { useWords } from '../../words.ts';
import { answerOf } from './profile-draft.ts';
import { useScaleName } from './useScaleName.ts';

/** What a meter is set to, whether it corrects for temperature, its pins and accuracy, as they were answered. */
export function ProfileFacts({ meter: { unit, profile } }: { meter: Pick<MeterOfYard, 'unit' | 'profile'> }) {
  const { say } = useWords();
  const scaleName = useScaleName();
  const { scale, compensatesTemp, pins, sdPct } = profile ?? unknownProfile;
  const temperature =
    scale.kind === 'species' && compensatesTemp !== true
      ? say('meter-profile.is-made-for', { scaleTempC: scale.tempC })
      : say(`meter-profile.compensates-is.${answerOf(compensatesTemp)}`);
  return (
    <Facts
      of={[
        [
          say(unit === 'ohm' ? 'meter-profile.shows' : 'meter-profile.is-set-to'),
          scaleName(scaleOf(unit, profile)),
        ],
        [say('meter-profile.temperature'), unit === 'pct' ? temperature : null],
        [say('meter-profile.pins-are'), <PinsText key="pins" pins={pins} />],
        [
          say('meter-profile.more'),
          sdPct === null ? null : say('meter-profile.accuracy-is', { accuracyPoints: 2 * sdPct }),
        ],
      ]}
    />
  );
}

function PinsText({ pins }: { pins: Pins | null }) {
  const { say } = useWords();
  const insulated = answerOf(pins?.insulated ?? null);
  const { lengthMm = null } = pins ?? {};
  return lengthMm === null
    ? say('meter-profile.pins-is-unknown', { insulated })
    : say('meter-profile.pins-is', { pinsMm: lengthMm, insulated });
}
