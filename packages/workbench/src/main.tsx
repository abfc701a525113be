// Entry of the page.

import { StrictMode } from 'preact/compat';
import { createRoot } from 'preact/compat/client';
import { App } from './page/app.tsx';

createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);

// Kept for use without a network; not while the page is served by its bundler.
if (import.meta.env.PROD && 'serviceWorker' in navigator)
  navigator.serviceWorker.register('./sw.js').catch(() => {
    // A browser or an address that keeps nothing: the page works all the same.
  });
