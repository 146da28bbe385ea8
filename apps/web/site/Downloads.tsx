import { useState } from 'react';
import { thorough } from '../core/client.js';
import { fonts } from '../core/files.js';
import { WORK_FILES, type WorkFile } from '../core/work-api.js';
import { hand } from '../outputs/files.js';
import { say, textNow } from '../store/project.js';
import { workOptions } from './useWork.js';

/** Papers and lists to take along or to send: made on this machine, the same bytes as the command line writes. */
export function Downloads({ files, invented = false }: { files: readonly WorkFile[]; invented?: boolean }) {
  const [busy, setBusy] = useState<WorkFile>();
  const make = async (name: WorkFile): Promise<void> => {
    setBusy(name);
    try {
      const o = await workOptions(invented);
      const file = await thorough().call('workFile', name, textNow(), await fonts(), o);
      if (file) hand(file);
      else say('There is nothing to write: put the errors right first.', 'problem');
    } catch (e) {
      say(`The file could not be made: ${e instanceof Error ? e.message.split('\n')[0] : String(e)}`, 'problem');
    } finally {
      setBusy(undefined);
    }
  };
  return (
    <ul className="outputs across downloads">
      {files.map((f) => (
        <li key={f}>
          <button type="button" disabled={busy !== undefined} data-file={f} onClick={() => void make(f)}>
            {busy === f ? 'Working…' : WORK_FILES[f]}
          </button>
        </li>
      ))}
    </ul>
  );
}
