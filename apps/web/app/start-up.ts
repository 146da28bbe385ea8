/** What happens once when the page opens: the last project comes back, the page learns to work without a network. */
import { isSingleFile } from '../core/files.js';
import { saveFile } from '../outputs/files.js';
import { open, redo, undo } from '../store/project.js';

export async function startUp(): Promise<void> {
  keys();
  const id = /p=([0-9a-f-]{36})/.exec(location.hash)?.[1];
  if (id) await open(id);
  if ('serviceWorker' in navigator && !isSingleFile() && location.protocol.startsWith('http'))
    await navigator.serviceWorker.register('./sw.js').catch(() => undefined);
  // Asks the browser not to clear what is kept when space runs short.
  await navigator.storage?.persist?.().catch(() => false);
}

function keys(): void {
  addEventListener('keydown', (e) => {
    if (!(e.ctrlKey || e.metaKey)) return;
    const typing = e.target instanceof HTMLInputElement || e.target instanceof HTMLTextAreaElement;
    const key = e.key.toLowerCase();
    if (key === 's') {
      e.preventDefault();
      saveFile();
    } else if (typing) return;
    else if (key === 'z' && !e.shiftKey) undo();
    else if (key === 'y' || (key === 'z' && e.shiftKey)) redo();
    else return;
    e.preventDefault();
  });
}
