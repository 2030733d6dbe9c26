import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { z } from 'zod';
import { App } from './App.tsx';
import { installBridge, makeBridge } from './bridge.ts';
import { setLink } from './stores/link.ts';
import './tokens.css';
import './base.css';

// The page's content policy forbids code made from strings, which zod would otherwise try for speed.
z.config({ jitless: true });

installBridge(makeBridge(setLink));
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
