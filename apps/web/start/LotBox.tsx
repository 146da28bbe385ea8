/** A lot with square corners from four distances; the survey's own lines can take its place later. */
import { useState } from 'react';
import { parseLength, writeLength } from '../../../src/drawing.js';
import { edit, useProject } from '../store/project.js';
import { boxEdits, boxOf, type LotBoxValues } from './lot-box.js';

const FIELDS: readonly (readonly [keyof LotBoxValues, string, string])[] = [
  ['width', 'Width of the lot', 'Along the street.'],
  ['depth', 'Depth of the lot', 'From the street to the rear line.'],
  ['rear', 'Patio wall to the rear line', 'Straight out from the wall.'],
  ['left', 'Left end of the patio wall to the left line', 'Left as seen looking out of the house.'],
];

export function LotBox() {
  const tree = useProject((p) => p.summary?.tree);
  const units = useProject((p) => p.summary?.units ?? 'us');
  const box = boxOf(tree);
  const [typed, setTyped] = useState<Partial<Record<keyof LotBoxValues, string>>>({});
  const [fault, setFault] = useState<string>();
  if (!box) return <p className="quiet">Your lot is written line by line, under Lot.</p>;
  const keep = (key: keyof LotBoxValues): void => {
    const text = typed[key];
    if (text === undefined) return;
    const p = parseLength(text);
    if (!p.ok) {
      setFault(`${p.message}. Write ${p.expected}.`);
      return;
    }
    setFault(undefined);
    setTyped((t) => ({ ...t, [key]: undefined }));
    void edit('lot measured', boxEdits(tree, { ...box, [key]: p.value }, units));
  };
  return (
    <div className="lot-box">
      <p className="quiet">For a lot with square corners. A fence is seldom the line: take these from the plat.</p>
      {FIELDS.map(([key, label, help]) => (
        <div className="field" key={key}>
          <label htmlFor={`lot-${key}`}>{label}</label>
          <input
            id={`lot-${key}`}
            value={typed[key] ?? writeLength(box[key], units)}
            aria-describedby={`lot-${key}-help`}
            onChange={(e) => setTyped((t) => ({ ...t, [key]: e.target.value }))}
            onBlur={() => keep(key)}
            onKeyDown={(e) => e.key === 'Enter' && keep(key)}
          />
          <p id={`lot-${key}-help`} className="help">
            {help}
          </p>
        </div>
      ))}
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
