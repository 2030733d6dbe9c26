import type { FoundDevice, MeterState } from '../../../shared-core/contract/meter.ts';
import { withAddressEnd } from '../../../shared-core/gatt/address-end.ts';
import { bridge, isInBrowser } from '../../data/bridge.ts';
import { askMeter } from '../../stores/meter.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { SameInReach } from './SameInReach.tsx';
import { Signal } from './Signal.tsx';

const bannerKind: Partial<Record<MeterState['phase'], 'done' | 'problem' | 'caution'>> = {
  live: 'done',
  failed: 'problem',
  reconnecting: 'caution',
  'needs-description': 'caution',
};

/** Which meter, if any, and the state of its connection. */
export function ConnectSheet({ state }: { state: MeterState }) {
  const { say } = useWords();
  const isConnected = state.deviceId !== null;
  const isSimulated = isConnected && state.kind === 'simulated';
  const name = isSimulated ? null : state.deviceName;
  const title = name ?? say(isSimulated ? 'meter.simulated' : 'meter.connect.title');
  return (
    <Sheet title={title} isName={name !== null}>
      <Banner kind={bannerKind[state.phase] ?? 'info'}>
        {say(state.message)} {state.phase === 'needs-description' && say('meter.connect.set-up-below')}
      </Banner>
      <SameInReach state={state} />
      <Actions>
        {isConnected || state.kind !== 'none' ? (
          <Button onClick={() => askMeter(bridge().command('meter.disconnect', {}))}>
            {say(isConnected ? 'meter.connect.disconnect' : 'meter.connect.stop')}
          </Button>
        ) : null}
        {!isConnected && (
          <>
            <Button
              kind="main"
              disabled={state.phase === 'scanning'}
              onClick={() => askMeter(bridge().command('meter.scan', {}))}
            >
              {say(state.phase === 'scanning' ? 'meter.connect.looking' : 'meter.connect.look')}
            </Button>
            {state.canSimulate && (
              <Button onClick={() => askMeter(bridge().command('meter.simulate', {}))}>
                {say('meter.connect.simulate')}
              </Button>
            )}
          </>
        )}
      </Actions>
      {!isConnected && state.devices.length > 0 && <DeviceList devices={state.devices} />}
      {!isConnected && state.phase === 'scanning' && state.devices.length === 0 && (
        <p>{say('meter.connect.none-found')}</p>
      )}
      <RadioInUse state={state} />
    </Sheet>
  );
}

/** How the radio is reached, and whose it is. */
function RadioInUse({ state: { kind, radio } }: { state: MeterState }) {
  const { say } = useWords();
  if (kind === 'simulated') return null;
  return (
    <p className="soft">
      {radio !== null && say(`meter.radio.${radio}`)} {isInBrowser() && say('meter.radio.in-browser')}
    </p>
  );
}

function DeviceList({ devices }: { devices: readonly FoundDevice[] }) {
  const { say } = useWords();
  /** Where two have one name, the end of the address is added. */
  const nameOf = ({ name, deviceId }: FoundDevice) => {
    const isOne = devices.filter((other) => other.name === name).length === 1;
    const shown = name || say('meter.nameless');
    return isOne ? shown : withAddressEnd(shown, deviceId);
  };
  return (
    <ul className="device-list" aria-label={say('meter.connect.devices')}>
      {devices.map((device) => (
        <li key={device.deviceId}>
          <span className="device-name">
            <span translate="no">{nameOf(device)}</span>
            {device.isKnown && <small>{say('meter.connect.used-before')}</small>}
          </span>
          <Signal rssiDbm={device.rssiDbm} />
          <Button
            aria-label={say('meter.connect.connect-to', { meterName: nameOf(device) })}
            onClick={() => askMeter(bridge().command('meter.connect', { deviceId: device.deviceId }))}
          >
            {say('meter.connect.connect')}
          </Button>
        </li>
      ))}
    </ul>
  );
}
