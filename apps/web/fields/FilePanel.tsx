import { useState } from 'react';
import { useDesk } from '../store/desk.js';
import { Field } from './Field.js';
import { TextEditor } from './TextEditor.js';

const PARTS: readonly (readonly [string, string])[] = [
  ['/job', 'Job and title block'],
  ['/house', 'House'],
  ['/lot', 'Lot'],
  ['/basis', 'What the office requires'],
  ['/patio', 'Ground and slabs'],
  ['/cover', 'Cover'],
  ['/choices', 'What you mean to buy'],
  ['/log', 'Approvals and revisions'],
  ['/prices', 'Prices'],
];

/** Every value of the project, each with its explanation. */
export default function FilePanel() {
  const field = useDesk((d) => d.field);
  const [asText, setAsText] = useState(false);
  if (asText)
    return (
      <>
        <button type="button" onClick={() => setAsText(false)}>
          Back to the fields
        </button>
        <TextEditor />
      </>
    );
  if (field)
    return (
      <>
        <button type="button" onClick={() => useDesk.setState({ field: undefined })}>
          All of the file
        </button>
        <Field path={field} />
      </>
    );
  return (
    <>
      <p className="quiet">Everything the sheets show comes from here. Each value stands once.</p>
      {PARTS.map(([path, title]) => (
        <details key={path}>
          <summary>{title}</summary>
          <Field path={path} />
        </details>
      ))}
      <button type="button" className="plain" onClick={() => setAsText(true)}>
        See it as text
      </button>
    </>
  );
}
