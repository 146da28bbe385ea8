import { createRoot } from 'react-dom/client';
import './look/tokens.css';
import './look/base.css';
import './look/desk.css';
import './look/panels.css';
import './look/site.css';
import './look/print.css';
import { App } from './app/App.js';
import { startUp } from './app/start-up.js';
import { letter } from './core/files.js';

createRoot(document.getElementById('app')!).render(<App />);
void letter().then(() => window.dispatchEvent(new Event('lettered')));
void startUp();
