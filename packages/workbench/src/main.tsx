// Entry of the page.

import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './page/app.tsx';

createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
