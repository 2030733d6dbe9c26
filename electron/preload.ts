import { contextBridge, ipcRenderer } from 'electron';
import type { WireBridge } from '../shared-core/contract/bridge.ts';

const bridge: WireBridge = {
  request: (name, input, envelope) => ipcRenderer.invoke('request', name, input, envelope),
  on: (listener) => {
    const heard = (_: unknown, name: string, data: unknown): void => listener(name, data);
    ipcRenderer.on('event', heard);
    return () => ipcRenderer.off('event', heard);
  },
};

contextBridge.exposeInMainWorld('pintally', bridge);
