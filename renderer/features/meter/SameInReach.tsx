import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { withAddressEnd } from '../../../shared-core/gatt/address-end.ts';
import { bridge } from '../../data/bridge.ts';
import { askMeter } from '../../stores/meter.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** While the meter does not answer: devices of its name that are heard, whose address no meter has. */
export function SameInReach({ state }: { state: MeterState }) {
  const { say } = useWords();
  if (state.phase !== 'reconnecting' || !state.deviceName) return null;
  return state.devices
    .filter(
      ({ name, isKnown, deviceId }) => name === state.deviceName && !isKnown && deviceId !== state.deviceId,
    )
    .map(({ name, deviceId }) => {
      const meterName = withAddressEnd(name, deviceId);
      return (
        <Banner
          key={deviceId}
          kind="caution"
          actions={
            <Button onClick={() => askMeter(bridge().command('meter.connect', { deviceId }))}>
              {say('meter.connect.connect-to', { meterName })}
            </Button>
          }
        >
          {say('meter.same.in-reach', { meterName })}
        </Banner>
      );
    });
}
