import { send } from '../radio/outbox.ts';
import type { Radio } from '../radio/radio.ts';
import type { AdapterReason } from '../radio-messages.ts';
import { adapterInterface, type Bluez } from './bluez.ts';
import { registerAgent } from './pairing-agent.ts';
import { Scan } from './scan.ts';
import { Sessions } from './session.ts';
import { Visits } from './visiting.ts';

/** A service that is only started again, as after an update of the system, is back well before. */
const backWithinMs = 10_000;

/** The adapter as BlueZ shares it among programs, which needs no right that a usual user does not have. */
export function bluezRadio(bluez: Bluez): Radio {
  const tellAdapter = (reason: AdapterReason) => send({ type: 'adapter', reason, way: 'bluez' });
  const scan = new Scan(bluez, tellAdapter);
  const sessions = new Sessions(bluez, scan);
  const visits = new Visits(bluez, scan);
  let tooLong: NodeJS.Timeout | undefined;

  const begin = () => {
    clearTimeout(tooLong);
    void registerAgent(bluez, (path) => path === sessions.pairing);
    scan.chooseAdapter();
  };
  const follow = () => {
    const before = scan.adapter;
    scan.chooseAdapter();
    if (scan.adapter !== before) sessions.lose();
  };

  return {
    start: () => {
      bluez.on('added', (path) => {
        if (bluez.property(path, adapterInterface, 'Address') !== undefined) follow();
      });
      bluez.on('removed', (_, interfaceNames) => interfaceNames.includes(adapterInterface) && follow());
      bluez.on(
        'changed',
        (_, name, changed) => name === adapterInterface && 'Powered' in changed && follow(),
      );
      bluez.on('stopped', () => {
        scan.forgetAdapter();
        sessions.lose();
        tellAdapter('starting');
        tooLong = setTimeout(() => tellAdapter('service-stopped'), backWithinMs);
      });
      bluez.on('started', begin);
      bluez.on('lost', () => tellAdapter('service-stopped'));
      begin();
    },
    scan: (on) => scan.setWanted(on),
    overhear: (on) => scan.setOverhear(on),
    sendFound: () => scan.sendFound(),
    connect: async (order) => {
      await visits.end();
      await sessions.connect(order);
    },
    listen: async (order) => {
      await visits.end();
      await sessions.listen(order);
    },
    watch: (order) => sessions.watch(order),
    prove: (attempt) => sessions.prove(attempt),
    disconnect: () => sessions.leave(),
    visit: (order) => visits.visit(order),
    endVisit: () => visits.end(),
    hangUp: async () => {
      await Promise.all([visits.end(), sessions.hangUp()]);
    },
  };
}
