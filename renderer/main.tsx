import './zod-without-eval.ts';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { followChanges } from './data/asking.ts';
import { installBridge, makeBridge } from './data/bridge.ts';
import { setLink } from './stores/link.ts';
import './tokens.css';
import './base.css';

installBridge(makeBridge(setLink));
followChanges();
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
