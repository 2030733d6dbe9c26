import './zod-without-eval.ts';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { installBridge, makeBridge } from './data/bridge.ts';
import { setLink } from './stores/link.ts';
import './tokens.css';
import './base.css';

installBridge(makeBridge(setLink));
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
