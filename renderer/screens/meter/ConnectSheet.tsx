import type { FoundDevice, MeterState } from '../../../shared-core/contract/meter.ts';
import { bridge } from '../../bridge.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Actions, Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Screen.tsx';
import { showMeter } from '../../stores/meter.ts';
import { attempt } from '../../stores/notices.ts';
import { Signal } from './Signal.tsx';

async function ask(work: Promise<MeterState>): Promise<void> {
  const state = await attempt(work);
  if (state) showMeter(state);
}

const bannerKind: Partial<Record<MeterState['phase'], 'done' | 'problem' | 'caution'>> = {
  live: 'done',
  failed: 'problem',
  reconnecting: 'caution',
  'needs-description': 'caution',
};

/** Which meter, if any, and how it stands with it. */
export function ConnectSheet({ state }: { state: MeterState }) {
  const isConnected = state.deviceId !== null;
  return (
    <Sheet title={state.deviceName ?? 'Connection'}>
      <Banner kind={bannerKind[state.phase] ?? 'info'}>{state.sentence}</Banner>
      <Actions>
        {isConnected || state.kind !== 'none' ? (
          <Button onClick={() => ask(bridge().command('meter.disconnect', {}))}>
            {isConnected ? 'Disconnect' : 'Stop'}
          </Button>
        ) : null}
        {!isConnected && (
          <>
            <Button
              kind="main"
              disabled={state.phase === 'scanning'}
              onClick={() => ask(bridge().command('meter.scan', {}))}
            >
              {state.phase === 'scanning' ? 'Looking …' : 'Look for Bluetooth meters'}
            </Button>
            <Button onClick={() => ask(bridge().command('meter.simulate', {}))}>
              Use the simulated meter
            </Button>
          </>
        )}
      </Actions>
      {!isConnected && state.devices.length > 0 && <DeviceList devices={state.devices} />}
      {!isConnected && state.phase === 'scanning' && state.devices.length === 0 && (
        <p>Nothing heard yet. Switch the meter on and hold it near; some wake only while a button is held.</p>
      )}
    </Sheet>
  );
}

function DeviceList({ devices }: { devices: readonly FoundDevice[] }) {
  return (
    <ul className="device-list" aria-label="Bluetooth devices heard">
      {devices.map((device) => (
        <li key={device.deviceId}>
          <span className="device-name">
            {device.name}
            <small>{device.deviceId}</small>
          </span>
          <Signal rssiDbm={device.rssiDbm} />
          <Button
            aria-label={`Connect ${device.name}`}
            onClick={() => ask(bridge().command('meter.connect', { deviceId: device.deviceId }))}
          >
            Connect
          </Button>
        </li>
      ))}
    </ul>
  );
}
