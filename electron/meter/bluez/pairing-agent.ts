import { defineInterface } from 'dbus-native';
import type { Bluez } from './bluez.ts';
import { textOfError } from './errors.ts';

const agentPath = '/org/pintally/agent';

/** As BlueZ passes a refusal on to the meter. */
function refuse(): never {
  throw Object.assign(new Error('Pintally asks for no code.'), { dbusName: 'org.bluez.Error.Rejected' });
}
const device = { device: 'o' };
const refused = { in: device, handler: refuse };

/**
 * Answers BlueZ where a meter asks for pairing. One that pairs without a code is paired: a person chose it, and a pin
 * meter has neither keys nor a secret. A code is refused, as nobody could type it here; in the system's settings they
 * can.
 *
 * @param isPaired  whether Pintally itself pairs the device of this path right now: every other one is refused
 * Source: doc/org.bluez.Agent.rst and doc/org.bluez.AgentManager.rst of BlueZ.
 */
export async function registerAgent(bluez: Bluez, isPaired: (path: string) => boolean): Promise<void> {
  const agent = defineInterface({
    name: 'org.bluez.Agent1',
    methods: {
      Release: { handler: () => null },
      RequestPinCode: { ...refused, out: { code: 's' } },
      RequestPasskey: { ...refused, out: { key: 'u' } },
      DisplayPinCode: { in: { ...device, code: 's' }, handler: refuse },
      DisplayPasskey: { in: { ...device, key: 'u', entered: 'q' }, handler: refuse },
      RequestConfirmation: { in: { ...device, key: 'u' }, handler: refuse },
      RequestAuthorization: {
        in: device,
        handler: (asking: { device: string }) => (isPaired(asking.device) ? null : refuse()),
      },
      AuthorizeService: { in: { ...device, uuid: 's' }, handler: refuse },
      Cancel: { handler: () => null },
    },
  });
  try {
    await bluez.bus.export(agentPath, agent);
    await bluez.call('/org/bluez', 'org.bluez.AgentManager1', 'RegisterAgent', {
      signature: 'os',
      body: [agentPath, 'NoInputNoOutput'],
    });
  } catch (error) {
    // Meters that ask for no pairing need no agent.
    console.error(`pairing agent: ${textOfError(error)}`);
  }
}
