import { useState } from 'react';
import type { ExportKind } from '../core/api.js';
import { useDesk } from '../store/desk.js';
import { say, useProject } from '../store/project.js';
import { exported, hand, saveFile } from './files.js';

interface Row {
  readonly kind: ExportKind;
  readonly title: string;
  readonly about: string;
}

const SET: readonly Row[] = [
  {
    kind: 'pdf',
    title: 'Permit set, PDF',
    about: 'All sheets to scale, the file the office takes. The same bytes as the command line writes.',
  },
  {
    kind: 'read-only',
    title: 'Set to read, one web page',
    about: 'For a contractor or a committee: opens without a server, cannot be changed.',
  },
  { kind: 'calculations', title: 'Calculations, text', about: 'Formula, numbers, result and clause of every check.' },
  { kind: 'dxf-plan', title: 'Plans at full scale, DXF', about: 'All plans in one drawing file, in inches.' },
];
const ONE: readonly Row[] = [
  { kind: 'sheet-pdf', title: 'This sheet, PDF', about: '' },
  { kind: 'sheet-svg', title: 'This sheet, SVG', about: '' },
  { kind: 'dxf', title: 'This sheet, DXF', about: '' },
];

export default function OutputsPanel() {
  const [busy, setBusy] = useState<ExportKind>();
  const sheet = useDesk((d) => d.sheet);
  const verdict = useProject((p) => p.summary?.verdict);
  const make = async (kind: ExportKind): Promise<void> => {
    setBusy(kind);
    try {
      const files = await exported(kind, sheet);
      for (const f of files) hand(f);
      if (files.length === 0) say('There is nothing to write: put the errors right first.', 'problem');
    } catch (e) {
      say(`The file could not be made: ${e instanceof Error ? e.message.split('\n')[0] : String(e)}`, 'problem');
    } finally {
      setBusy(undefined);
    }
  };
  const rows = (list: readonly Row[]) =>
    list.map((r) => (
      <li key={r.kind}>
        <button type="button" disabled={busy !== undefined} onClick={() => void make(r.kind)} data-export={r.kind}>
          {busy === r.kind ? 'Working…' : r.title}
        </button>
        {r.about && <p className="quiet">{r.about}</p>}
      </li>
    ));
  return (
    <>
      {verdict && !verdict.issuable && (
        <p className="asked">
          Every sheet will say <b>Preliminary – not for permit</b>, and the cover says why. That is right for asking
          questions at the counter, not for handing in.
        </p>
      )}
      <ul className="outputs">{rows(SET)}</ul>
      <h3>Sheet {sheet}</h3>
      <ul className="outputs across">{rows(ONE)}</ul>
      <h3>Project file</h3>
      <p className="quiet">
        The one file all of this is made from. Keep it with your papers; it opens here again and on the command line.
      </p>
      <button type="button" onClick={saveFile}>
        Save the project file
      </button>
      <p className="quiet">
        Nothing has left this machine. It helps prepare a submittal and certifies nothing: the authority having
        jurisdiction decides.
      </p>
    </>
  );
}
