/** Starts the help page: the method in pictures and the ways of the workbench, in words that need no server. */
import { createRoot } from 'react-dom/client';
import { assert } from '#geometry/assert.ts';
import { HelpPage } from './HelpPage.tsx';
import './help.css';

const page = document.getElementById('page');
assert(page !== null, 'the help page has a place to stand');
createRoot(page).render(<HelpPage />);
