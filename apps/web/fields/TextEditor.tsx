import { useEffect, useState } from 'react';
import { present } from '../store/history.js';
import { change, useProject } from '../store/project.js';

/** The file's own text, for those who like it, and for files that cannot be read yet. */
export function TextEditor() {
  const text = useProject((p) => (p.history ? present(p.history).text : ''));
  const [typed, setTyped] = useState(text);
  useEffect(() => setTyped(text), [text]);
  return (
    <div className="text-editor">
      <label htmlFor="file-text">Text of the file</label>
      <textarea id="file-text" spellCheck={false} value={typed} rows={22} onChange={(e) => setTyped(e.target.value)} />
      <div className="row">
        <button
          type="button"
          className="main"
          disabled={typed === text}
          onClick={() => void change('text edited', typed)}
        >
          Read it again
        </button>
        <button type="button" disabled={typed === text} onClick={() => setTyped(text)}>
          Back to what it was
        </button>
      </div>
    </div>
  );
}
