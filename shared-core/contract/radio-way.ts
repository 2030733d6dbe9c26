import { z } from 'zod';

/**
 * How Pintally reaches the radio of the computer. `bluez`: through the Bluetooth service of Linux. `hci`: straight through
 * a raw socket, on a Linux without that service; `hci-beside-bluez`: the same, where the service lets this user do
 * nothing. `macos`, `windows`: through the system.
 */
export const radioWaySchema = z.enum(['bluez', 'hci', 'hci-beside-bluez', 'macos', 'windows']);
export type RadioWay = z.infer<typeof radioWaySchema>;
