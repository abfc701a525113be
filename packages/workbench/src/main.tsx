// Entry of the page.

import { StrictMode } from 'preact/compat';
import { createRoot } from 'preact/compat/client';
import { App } from './page/app.tsx';

createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
