/** Answers at once: derives, draws, drags. Loaded with the page. */
import { know, listen, quickApi } from './worker.js';

know(() => import('./whole.js'));
listen(quickApi);
