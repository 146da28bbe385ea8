/** A file that cannot be drawn: every problem at once, each with its place and what would be right there. */

import { TextEditor } from '../fields/TextEditor.js';
import { useProject } from '../store/project.js';

export function Damaged() {
  const issues = useProject((p) => p.summary?.issues);
  const errors = (issues ?? []).filter((i) => i.severity === 'error');
  return (
    <div className="damaged">
      <h2>This file needs a hand before anything can be drawn</h2>
      <p>
        {errors.length === 1 ? 'One thing is' : `${errors.length} things are`} not right. Each says where it stands and
        what would be right. Nothing of the file has been changed.
      </p>
      <ol className="issues">
        {errors.map((i) => (
          <li key={`${i.code}${i.path}${i.line}${i.column}`}>
            <code>
              {i.line === undefined ? i.path || 'whole file' : `line ${i.line}, column ${i.column}`}
              {i.path && i.line !== undefined ? ` · ${i.path}` : ''} · {i.code}
            </code>
            <p>{i.message}</p>
            {i.found !== undefined && <p className="quiet">Found: {i.found}</p>}
            {i.expected !== undefined && (
              <p>
                What would be right: <b>{i.expected}</b>
              </p>
            )}
          </li>
        ))}
      </ol>
      <TextEditor />
    </div>
  );
}
