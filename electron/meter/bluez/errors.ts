/** What BlueZ and the bus answer where they refuse a call. Names: BlueZ's API documents and the D-Bus specification. */

/** Such as `org.bluez.Error.NotReady`; empty for an error that is none of the bus. */
export function nameOfError(error: unknown): string {
  const name = (error as { dbusName?: unknown } | null)?.dbusName;
  return typeof name === 'string' ? name : '';
}

/** For the fault log. */
export function textOfError(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return [nameOfError(error), text].filter((part) => part !== '').join(': ');
}

export const isNamed = (error: unknown, ...names: string[]): boolean =>
  names.some((name) => nameOfError(error) === `org.bluez.Error.${name}`);

/** The bus or the service does not let this user ask it: D-Bus policy, or polkit. */
export const isNotAllowed = (error: unknown): boolean =>
  [
    'org.freedesktop.DBus.Error.AccessDenied',
    'org.freedesktop.DBus.Error.AuthFailed',
    'org.freedesktop.DBus.Error.InteractiveAuthorizationRequired',
  ].includes(nameOfError(error));

/**
 * The meter answers only once it is paired. BlueZ has a name for two of the ATT errors; the others come as text with
 * their code (Core Specification, Vol 3 Part F 3.4.1.1): 0x05 authentication, 0x08 authorization, 0x0c key size, 0x0f
 * encryption.
 */
export const asksForPairing = (error: unknown): boolean =>
  isNamed(error, 'NotAuthorized') ||
  (isNamed(error, 'Failed', 'NotPermitted') &&
    /\b0x0?[58cf]\b|authenticat|authoriz|encrypt|not paired/i.test(textOfError(error)));
