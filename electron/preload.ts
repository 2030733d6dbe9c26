import { contextBridge, ipcRenderer } from 'electron';
import type { WireBridge } from '../shared-core/contract/bridge.ts';

const bridge: WireBridge = {
  request: (name, input) => ipcRenderer.invoke('call', name, input),
  on: (listener) => {
    const heard = (_: unknown, name: string, data: unknown): void => listener(name, data);
    ipcRenderer.on('event', heard);
    return () => ipcRenderer.off('event', heard);
  },
};

contextBridge.exposeInMainWorld('pintally', bridge);
