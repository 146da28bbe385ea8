import { useEffect, useState } from 'react';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onWrite: (typed: string) => Promise<boolean>;
  readonly placeholder?: string;
  /** What the line belongs to, for screen readers. */
  readonly about?: string;
  /** Label for screen readers only, where the row says it to the eye. */
  readonly quiet?: boolean;
  readonly type?: 'text' | 'date';
  readonly mode?: 'text' | 'decimal';
}

/** A line that is written into the project when it is left or Enter is pressed. */
export function NoteField({ label, value, onWrite, placeholder, about, quiet, type = 'text', mode = 'text' }: Props) {
  const [typed, setTyped] = useState(value);
  const [refused, setRefused] = useState(false);
  useEffect(() => {
    setTyped(value);
    setRefused(false);
  }, [value]);
  const write = async (): Promise<void> => {
    const next = typed.trim();
    if (next === value) {
      setRefused(false);
      return;
    }
    setRefused(!(await onWrite(next)));
  };
  return (
    <label className="note-field">
      <span className={quiet ? 'sr' : ''}>{label}</span>
      <input
        type={type}
        aria-label={about === undefined ? undefined : `${label}: ${about}`}
        inputMode={mode}
        value={typed}
        placeholder={placeholder}
        aria-invalid={refused || undefined}
        autoComplete="off"
        onChange={(e) => setTyped(e.target.value)}
        onBlur={() => void write()}
        onKeyDown={(e) => {
          if (e.key === 'Enter') void write();
          if (e.key === 'Escape') setTyped(value);
        }}
      />
    </label>
  );
}
