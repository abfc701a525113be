// Entry of the page.

import { createRoot } from 'react-dom/client';

createRoot(document.getElementById('page')!).render(<h1>Stillair</h1>);
