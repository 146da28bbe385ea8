/** What the slow worker answers about the text on the desk; the last answer stays while the next is worked out. */
import { useEffect, useMemo, useState } from 'react';
import type { Changed, Thorough } from '../core/api.js';
import { type Client, quick, thorough } from '../core/client.js';
import { fileBytes } from '../core/files.js';
import { latest } from '../core/latest.js';
import type { Noted, WorkOptions } from '../core/work-api.js';
import { present } from '../store/history.js';
import { applied, say, textNow, useProject } from '../store/project.js';

/** Day on this machine, as the file writes days. */
export function today(): string {
  const d = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
}

let solver: Promise<Uint8Array | undefined> | undefined;

/** The solver's bytes, asked for once and only where something is bought. */
export async function workOptions(invented: boolean): Promise<WorkOptions> {
  solver ??= fileBytes('solver.wasm').catch(() => undefined);
  return { today: today(), invented, solver: await solver };
}

export interface Worked<T> {
  readonly value: T | undefined;
  readonly busy: boolean;
  readonly fault: string | undefined;
}

/** @param ask stable between renders; a new one asks anew */
export function useWork<T>(ask: (worker: Client<Thorough>, text: string) => Promise<T>): Worked<T> {
  const text = useProject((p) => (p.history ? present(p.history).text : ''));
  const [state, setState] = useState<Worked<T>>({ value: undefined, busy: true, fault: undefined });
  const run = useMemo(() => latest(async (t: string) => ({ got: await ask(thorough(), t) })), [ask]);
  useEffect(() => {
    let here = true;
    setState((s) => ({ ...s, busy: true }));
    run(text)
      .then((answer) => {
        // Nothing at all: a newer text was asked about meanwhile.
        if (here && answer) setState({ value: answer.got, busy: false, fault: undefined });
      })
      .catch((e: unknown) => {
        const fault = e instanceof Error ? e.message.split('\n')[0]! : String(e);
        if (here) setState((s) => ({ ...s, busy: false, fault }));
      });
    return () => {
      here = false;
    };
  }, [run, text]);
  return state;
}

let writing: Promise<unknown> = Promise.resolve();

/**
 * Writes a note into the project. Notes follow one another, each on the text that the one before left, so that two quick
 * taps both count; the sheets follow when they can.
 */
export function note(name: string, n: Noted): Promise<boolean> {
  const written = writing.then(async () => {
    const c: Changed = await quick.call('noted', textNow(), n);
    const shown = applied(name, c);
    if (c.text !== undefined) return true;
    return shown;
  });
  writing = written.catch(() => undefined);
  return written.catch((e: unknown) => {
    say(`That could not be written down: ${e instanceof Error ? e.message.split('\n')[0] : String(e)}`, 'problem');
    return false;
  });
}
