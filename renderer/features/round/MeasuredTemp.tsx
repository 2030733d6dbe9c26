import type { Sensor } from '../../../shared-core/contract/air.ts';
import { isFreshAir } from '../../../shared-core/wood/climate/measured-air.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import type { useWoodTemp } from '../../form/TemperatureField.tsx';
import { useSaving } from '../../form/useSaving.ts';
import { useMeter } from '../../stores/meter.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

type Answer = ReturnType<typeof useWoodTemp>;

/** A probe thermometer is read into the wood's temperature. The air at the boards is only shown: wood may be colder. */
export function MeasuredTemp({ answer, placeId }: { answer: Answer; placeId: number | null }) {
  const sensors = useQuery('sensors.list', {}).output ?? [];
  return (
    <>
      <FromMeter answer={answer} />
      {sensors
        .filter(({ kind }) => kind === 'probe')
        .map((probe) => (
          <ReadProbe key={probe.id} probe={probe} answer={answer} />
        ))}
      {placeId !== null && <AirHere placeId={placeId} />}
    </>
  );
}

/** What the connected meter sends with its values. */
function FromMeter({ answer }: { answer: Answer }) {
  const { say } = useWords();
  const woodTempC = useMeter(({ live }) => live?.tempC ?? null);
  if (woodTempC === null) return null;
  return (
    <p>
      <Button onClick={() => answer.set({ woodTempC, unknown: false })}>
        {say('round-temp.from-meter', { woodTempC })}
      </Button>
    </p>
  );
}

function ReadProbe({ probe, answer }: { probe: Sensor; answer: Answer }) {
  const { say } = useWords();
  const { busy, problem, save } = useSaving(() => undefined);
  const read = () =>
    save(async () => {
      const { tempC } = await bridge().command('sensors.read', { id: probe.id });
      if (tempC !== null) answer.set({ woodTempC: tempC, unknown: false });
    });
  return (
    <>
      <p>
        <Button onClick={() => void read()}>
          {say(busy ? 'sensors.reading' : 'sensors.read-named', { name: probe.name })}
        </Button>
      </p>
      {problem && <Banner kind="problem">{problem.sentence}</Banner>}
    </>
  );
}

function AirHere({ placeId }: { placeId: number }) {
  const { say } = useWords();
  const last = useQuery('air.ofPlace', { placeId }).output?.last;
  if (
    last?.tempC == null ||
    last.rh === null ||
    !isFreshAir(Date.parse(last.at), Date.parse(new Date().toISOString()))
  )
    return null;
  return (
    <p className="soft">
      {say('round-start.air-here', {
        measuredAt: last.at,
        airTempC: last.tempC,
        humidityRhPct: 100 * last.rh,
      })}
    </p>
  );
}
