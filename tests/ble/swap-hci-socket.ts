/** Preload (`--import`): whoever asks for the native HCI socket gets the emulated one. For tests only. */
import { registerHooks } from 'node:module';

registerHooks({
  resolve(specifier, context, next) {
    if (specifier !== '@abandonware/bluetooth-hci-socket') return next(specifier, context);
    return { url: new URL('./h4-socket.ts', import.meta.url).href, shortCircuit: true };
  },
});
