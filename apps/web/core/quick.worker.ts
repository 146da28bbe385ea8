/** Answers at once: derives, draws, drags. Loaded with the page. */
import { listen, quickApi } from './worker.js';

listen(quickApi);
